package paperbark.ledger;

import java.nio.file.Files;
import java.nio.file.Path;
import org.sqlite.util.OSInfo;

/**
 * The database's library for this system, where it lies unpacked beside the program: used from
 * there it needs no copy among the temporary files, of which a killed run would leave one behind.
 */
final class NativeLibrary {
    private static final String PROGRAM = "paperbark.home";
    private static final String PLACE = "org.sqlite.lib.path";

    private NativeLibrary() {}

    /** Lets the driver look there first; for a system that is not among them it makes its copy. */
    static void prefer() {
        String home = System.getProperty(PROGRAM);
        if (home == null || System.getProperty(PLACE) != null) {
            return;
        }
        Path folder =
                Path.of(home, "lib", "native").resolve(OSInfo.getNativeLibFolderPathForCurrentOS());
        if (Files.isDirectory(folder)) {
            System.setProperty(PLACE, folder.toString());
        }
    }
}
