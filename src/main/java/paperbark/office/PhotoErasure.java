package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import paperbark.disk.Disk;
import paperbark.ledger.CurrentJob;
import paperbark.ledger.Ledger;

/** Deletes the files that people put by for a job: they show the owner's house and papers. */
final class PhotoErasure {
    private PhotoErasure() {}

    /**
     * Deletes what is of the job alone, and the folders that are empty then.
     *
     * @param unread takes the files that may be of another job too
     * @return what was done, a line a file
     * @throws IOException when a file cannot be deleted; a second run completes it
     */
    static List<String> of(Office office, Ledger ledger, String job, List<Path> unread)
            throws IOException {
        JobFiles files =
                JobFiles.in(
                        office, ledger.currentJobs().stream().map(CurrentJob::reference).toList());
        List<String> done = new ArrayList<>();
        for (JobFile file : files.of(job)) {
            Files.deleteIfExists(file.path());
            Disk.force(file.path().getParent());
            done.add("deleted photos/" + file.name());
        }
        if (!done.isEmpty()) {
            clear(office.photos().toRealPath(), files.of(job));
        }
        JobNames names = new JobNames(List.of(job));
        files.aside().stream()
                .filter(aside -> !names.in(aside.name()).isEmpty())
                .forEach(aside -> unread.add(office.photos().resolve(aside.name())));
        return done;
    }

    private static void clear(Path root, List<JobFile> deleted) throws IOException {
        for (JobFile file : deleted) {
            Path folder = file.path().getParent();
            while (!folder.equals(root) && Office.list(folder).isEmpty()) {
                Files.deleteIfExists(folder);
                folder = folder.getParent();
                Disk.force(folder);
            }
        }
    }
}
