package paperbark.batch;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.job.Job;

/** Findings by the job that they are about, gone through once however many jobs ask. */
final class FindingsByJob {
    private record Key(String reference, String sheet, int row) {}

    private final Map<Key, List<Finding>> all = new HashMap<>();

    FindingsByJob(List<Finding> findings) {
        for (Finding finding : findings) {
            finding.job()
                    .map(reference -> key(reference, finding.place()))
                    .ifPresent(
                            key -> all.computeIfAbsent(key, k -> new ArrayList<>()).add(finding));
        }
    }

    /** In the order in which they were met. Two rows may share a job number; each has its own. */
    List<Finding> of(Job job) {
        Key key = new Key(job.reference(), job.origin().sheet(), job.origin().row());
        return all.getOrDefault(key, List.of());
    }

    private static Key key(String reference, Place place) {
        return new Key(reference, place.sheetName(), place.rowNumber());
    }
}
