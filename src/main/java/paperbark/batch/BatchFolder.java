package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Predicate;
import paperbark.disk.FileNames;

/**
 * Where a batch is published: a folder named after the day and the register, with a number behind
 * it when the name is taken by another batch.
 *
 * @param path the folder
 * @param isPublishedAlready whether exactly this batch lies there already
 */
record BatchFolder(Path path, boolean isPublishedAlready) {

    /** The name that stands on every paper. */
    String id() {
        return path.getFileName().toString();
    }

    /**
     * Chooses the folder for a request whose sources have the given hashes.
     *
     * @param isTaken whether the ledger knows a batch of that name, which may lie elsewhere
     * @param isWithdrawn whether a job of it was booked out since, so that it stands no longer
     */
    static BatchFolder choose(
            Request request,
            Manifest.Sources sources,
            Predicate<String> isTaken,
            Predicate<String> isWithdrawn)
            throws IOException {
        String name =
                request.run().today()
                        + "-"
                        + FileNames.slug(FileNames.stem(request.register().file()));
        for (int number = 1; ; number++) {
            Path path = request.out().resolve(number == 1 ? name : name + "-" + number);
            if (!Files.exists(path)) {
                if (isTaken.test(path.getFileName().toString())) {
                    continue;
                }
                return new BatchFolder(path, false);
            }
            if (Manifest.isOf(path.resolve("manifest.json"), sources)
                    && !isWithdrawn.test(path.getFileName().toString())) {
                return new BatchFolder(path, true);
            }
        }
    }
}
