package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
     * @param earlier the batches that the ledger knows, which may lie elsewhere
     */
    static BatchFolder choose(Request request, Manifest.Sources sources, EarlierBatches earlier)
            throws IOException {
        String name =
                request.run().today()
                        + "-"
                        + FileNames.slug(FileNames.stem(request.register().file()));
        for (int number = 1; ; number++) {
            Path path = request.out().resolve(number == 1 ? name : name + "-" + number);
            if (!Files.exists(path)) {
                if (earlier.knows(path.getFileName().toString())) {
                    continue;
                }
                return new BatchFolder(path, false);
            }
            if (Manifest.isOf(path.resolve("manifest.json"), sources)
                    && !earlier.countsNoLonger(path.getFileName().toString())) {
                return new BatchFolder(path, true);
            }
        }
    }
}
