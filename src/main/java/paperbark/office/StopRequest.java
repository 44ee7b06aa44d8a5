package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import paperbark.disk.Disk;

/**
 * The wish that whoever attends an office folder ends. It is a file in the folder, since it has to
 * reach a process of another computer too where the folder is on a share.
 */
public final class StopRequest {
    private StopRequest() {}

    private static Path file(Office office) {
        return office.root().resolve(".stop-asked");
    }

    /** Asks; the register that is being worked on is finished first. */
    public static void make(Office office) throws IOException {
        Disk.write(file(office), "Stop.\n".getBytes(StandardCharsets.UTF_8));
    }

    /** Whether somebody asked. */
    public static boolean isMade(Office office) {
        return Files.exists(file(office));
    }

    /** Takes it back, or notes that it was answered. */
    public static void clear(Office office) throws IOException {
        Files.deleteIfExists(file(office));
    }
}
