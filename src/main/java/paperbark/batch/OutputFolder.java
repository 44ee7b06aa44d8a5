package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;

/**
 * What tells one output folder from another in a ledger that several share. The id lies in the
 * folder and moves with it.
 */
public final class OutputFolder {
    private static final String NAME = ".paperbark-place";

    private OutputFolder() {}

    /** The folder's id, made when it has none yet. */
    public static String id(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        if (!Files.isRegularFile(file)) {
            Disk.replace(file, (UUID.randomUUID() + "\n").getBytes(StandardCharsets.UTF_8));
        }
        return Files.readString(file).strip();
    }
}
