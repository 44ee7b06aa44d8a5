package paperbark.disk;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.nio.file.FileSystem;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A file system in memory that follows the rules of Windows for paths: drives, backslashes, case
 * that does not count, signs that no name may have. Names that it lets through and Windows does not
 * are told by {@link #takes}.
 */
public final class Windows {
    // Source: Microsoft's page "Naming Files, Paths, and Namespaces", from memory.
    private static final Pattern DEVICE =
            Pattern.compile("(?i)(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\\..*)?");
    private static final Set<Integer> NEVER =
            Set.of(0x22, 0x2a, 0x2f, 0x3a, 0x3c, 0x3e, 0x3f, 0x5c, 0x7c);
    private static final int LONGEST_NAME = 255;

    private Windows() {}

    /** An empty drive C. */
    public static FileSystem drive() {
        return Jimfs.newFileSystem(Configuration.windows());
    }

    /** Whether Windows takes a name of a file or folder as it is. */
    public static boolean takes(String name) {
        return !name.isEmpty()
                && name.length() <= LONGEST_NAME
                && !DEVICE.matcher(name).matches()
                && !name.endsWith(".")
                && !name.endsWith(" ")
                && name.chars().noneMatch(c -> c < 0x20 || NEVER.contains(c));
    }
}
