package paperbark.disk;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.GroupPrincipal;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Set;

/**
 * Who may read what: whatever is made takes the rights and the group of the folder it is made in,
 * so that the office folder decides for all that lies in it. Nobody but owner and group ever gets
 * the right to write, and in a folder that everybody shares, such as one for temporary files, the
 * owner alone gets any.
 */
public final class Rights {
    private static final String MODE = "unix:mode";
    private static final int FOLDERS = 02775;
    private static final int FILES = 0664;
    private static final int READ = 0444;
    private static final int OWNERS_ALONE = 0700;
    private static final int OF_GROUP = 02070;
    private static final int SHARED_BY_ALL = 01000;

    private Rights() {}

    /** Gives a file or folder the rights of the folder it lies in; does nothing on Windows. */
    public static void ofFolderAround(Path made) throws IOException {
        Path around = made.getParent();
        if (!isUnix(made) || around == null) {
            return;
        }
        int given = (Integer) Files.getAttribute(around, MODE);
        if ((given & SHARED_BY_ALL) != 0) {
            given = OWNERS_ALONE;
        }
        if (!takesGroup(made, around)) {
            given &= ~OF_GROUP;
        }
        given |= OWNERS_ALONE;
        Files.setAttribute(made, MODE, given & (Files.isDirectory(made) ? FOLDERS : FILES));
    }

    /** The same of a file that may be somebody else's, whose rights then stay as they are. */
    public static void ofFolderAroundIfOwn(Path made) {
        try {
            ofFolderAround(made);
        } catch (IOException e) {
            // Only its owner may change it; the rights of the folder hold all the same.
            return;
        }
    }

    /** A folder that only its owner may look into. */
    public static void keepPrivate(Path folder) throws IOException {
        if (isUnix(folder)) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        }
    }

    /**
     * Lets whoever may read a file start it too; does nothing on Windows, where a name does that.
     */
    public static void letStart(Path file) throws IOException {
        if (isUnix(file)) {
            int given = (Integer) Files.getAttribute(file, MODE);
            Files.setAttribute(file, MODE, given | (given & READ) >> 2);
        }
    }

    /** Who besides the owner may read in a folder, in words; empty where nobody may. */
    public static String readers(Path folder) throws IOException {
        if (!isUnix(folder)) {
            return "";
        }
        Set<PosixFilePermission> rights = EnumSet.copyOf(Files.getPosixFilePermissions(folder));
        if (rights.contains(PosixFilePermission.OTHERS_READ)) {
            return "everybody on this computer";
        }
        return rights.contains(PosixFilePermission.GROUP_READ)
                ? "the group " + group(folder).getName()
                : "";
    }

    private static boolean takesGroup(Path made, Path around) throws IOException {
        GroupPrincipal group = group(around);
        if (group(made).equals(group)) {
            return true;
        }
        try {
            Files.getFileAttributeView(made, PosixFileAttributeView.class).setGroup(group);
            return true;
        } catch (FileSystemException e) {
            // The user is not in that group; then no other group gets its rights.
            return false;
        }
    }

    private static GroupPrincipal group(Path path) throws IOException {
        return Files.getFileAttributeView(path, PosixFileAttributeView.class)
                .readAttributes()
                .group();
    }

    private static boolean isUnix(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("unix");
    }
}
