package paperbark.disk;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.codec.binary.Hex;
import org.apache.commons.codec.digest.DigestUtils;
import org.apache.commons.io.file.PathUtils;
import paperbark.fault.Trace;

/** Files that are on the disk, and not only in memory, once a call returns. */
public final class Disk {
    private Disk() {}

    /** What a file is to hold. */
    @FunctionalInterface
    public interface Content {
        /** Writes it. */
        void to(OutputStream out) throws IOException;
    }

    /**
     * Makes a folder and those above it that are missing. Each takes the rights of the folder it
     * lies in.
     */
    public static void makeFolders(Path folder) throws IOException {
        if (folder == null || Files.isDirectory(folder)) {
            return;
        }
        makeFolders(folder.getParent());
        try {
            Files.createDirectory(folder);
        } catch (FileAlreadyExistsException e) {
            if (Files.isDirectory(folder)) {
                // Another thread was faster.
                return;
            }
            throw e;
        }
        Rights.ofFolderAround(folder);
    }

    /** Writes a file, forced to the disk, with the rights of the folder it lies in. */
    public static void write(Path file, byte[] content) throws IOException {
        write(file, out -> out.write(content));
    }

    /**
     * The same for content that is never in memory as a whole.
     *
     * @return its SHA-256 in hexadecimal
     */
    public static String write(Path file, Content content) throws IOException {
        MessageDigest digest = DigestUtils.getSha256Digest();
        try (FileChannel channel = opened(file);
                OutputStream out =
                        new BufferedOutputStream(
                                new DigestOutputStream(
                                        Channels.newOutputStream(channel), digest))) {
            content.to(out);
            out.flush();
            Trace.WRITE.of(file);
            force(channel, file);
        }
        return Hex.encodeHexString(digest.digest());
    }

    /** The rights are set before anything is in the file. */
    private static FileChannel opened(Path file) throws IOException {
        FileChannel channel =
                FileChannel.open(
                        file,
                        StandardOpenOption.CREATE,
                        StandardOpenOption.WRITE,
                        StandardOpenOption.TRUNCATE_EXISTING);
        try {
            Rights.ofFolderAround(file);
            return channel;
        } catch (IOException e) {
            channel.close();
            throw e;
        }
    }

    /** Writes a file so that it appears whole or not at all, in place of an older one. */
    public static void replace(Path file, byte[] content) throws IOException {
        Path parent = file.getParent();
        makeFolders(parent);
        Path hidden = Files.createTempFile(parent, "." + file.getFileName() + "-", ".part");
        try {
            write(hidden, content);
            Patience.with(
                    file,
                    () ->
                            Files.move(
                                    hidden,
                                    file,
                                    StandardCopyOption.ATOMIC_MOVE,
                                    StandardCopyOption.REPLACE_EXISTING));
            Trace.MOVE.of(hidden, file);
            force(parent);
        } finally {
            Files.deleteIfExists(hidden);
        }
    }

    /** Moves a file to where an older one may be, whose place it then takes, by one rename. */
    public static void moveOver(Path from, Path to) throws IOException {
        makeFolders(to.getParent());
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        Trace.MOVE.of(from, to);
        force(to.getParent());
        force(from.getParent());
    }

    /**
     * Moves a file or folder within one file system, by one rename.
     *
     * @throws IOException also when the target is there: a rename onto an empty folder or a file
     *     would replace it silently
     */
    public static void move(Path from, Path to) throws IOException {
        if (Files.exists(to)) {
            throw new IOException(to + " appeared meanwhile.");
        }
        Patience.with(from, () -> Files.move(from, to, StandardCopyOption.ATOMIC_MOVE));
        Trace.MOVE.of(from, to);
        force(to.getParent());
        force(from.getParent());
    }

    /** Forces a folder's list of names to the disk. */
    public static void force(Path folder) throws IOException {
        // Windows cannot open a folder for this; there the rename alone has to do.
        if (isPosix(folder)) {
            try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
                force(channel, folder);
            }
        }
    }

    private static void force(FileChannel channel, Path path) throws IOException {
        channel.force(true);
        Trace.FORCE.of(path);
    }

    /** Forces a folder and those below it. */
    public static void forceAll(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            List<Path> folders =
                    all.filter(Files::isDirectory).sorted(Comparator.reverseOrder()).toList();
            for (Path each : folders) {
                force(each);
            }
        }
    }

    /** Deletes a folder with everything in it; one that is not there is no fault. */
    public static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            PathUtils.deleteDirectory(folder);
        }
    }

    static boolean isPosix(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("posix");
    }
}
