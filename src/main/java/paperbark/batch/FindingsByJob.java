package paperbark.batch;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.job.Job;

/** Findings by the job that they are about, gone through once however many jobs ask. */
final class FindingsByJob {
    private record Key(String reference, String sheet, int row) {}

    private final Map<Key, List<Finding>> all = new HashMap<>();

    /**
     * The findings that are about jobs. One on a row that is no job of its own, as where a job
     * stands on several rows, goes to the first job of its number.
     */
    FindingsByJob(List<Finding> findings, List<Job> jobs) {
        Set<Key> own = jobs.stream().map(FindingsByJob::key).collect(Collectors.toSet());
        Map<String, Key> first =
                jobs.stream()
                        .collect(
                                Collectors.toMap(
                                        Job::reference, FindingsByJob::key, (one, other) -> one));
        for (Finding finding : findings) {
            finding.job()
                    .map(reference -> key(reference, finding.place()))
                    .map(key -> own.contains(key) ? key : first.getOrDefault(key.reference(), key))
                    .ifPresent(
                            key -> all.computeIfAbsent(key, k -> new ArrayList<>()).add(finding));
        }
    }

    /** In the order in which they were met. Two rows may share a job number; each has its own. */
    List<Finding> of(Job job) {
        return all.getOrDefault(key(job), List.of());
    }

    private static Key key(Job job) {
        return new Key(job.reference(), job.origin().sheet(), job.origin().row());
    }

    private static Key key(String reference, Place place) {
        return new Key(reference, place.sheetName(), place.rowNumber());
    }
}
