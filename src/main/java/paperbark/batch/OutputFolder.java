package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.UUID;
import paperbark.disk.Disk;

/**
 * What tells one output folder from another in a ledger that several share. The id lies in the
 * folder and moves with it.
 */
public final class OutputFolder {
    private static final String NAME = ".paperbark-place";

    private OutputFolder() {}

    /** The folder's id, if it has one. */
    public static Optional<String> known(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        return Files.isRegularFile(file)
                ? Optional.of(Files.readString(file).strip())
                : Optional.empty();
    }

    /** The folder's id, made when it has none yet. */
    public static String id(Path folder) throws IOException {
        Optional<String> known = known(folder);
        if (known.isPresent()) {
            return known.get();
        }
        String id = UUID.randomUUID().toString();
        Disk.replace(folder.resolve(NAME), (id + "\n").getBytes(StandardCharsets.UTF_8));
        return id;
    }
}
