package paperbark.batch;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.codec.binary.Hex;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * A folder under a hidden name that becomes visible, whole, by one rename on the same file system.
 * Whatever is left of it when closed without that is deleted.
 */
final class Staging implements AutoCloseable {
    private final Path target;
    private final Path hidden;
    private final Map<String, Written> written = new TreeMap<>();

    /** A file as it was written. */
    record Written(long bytes, String sha256) {}

    private Staging(Path target, Path hidden) {
        this.target = target;
        this.hidden = hidden;
    }

    /** Prepares to publish a folder that must not exist yet. */
    static Staging of(Path target) throws IOException {
        Path parent = target.toAbsolutePath().getParent();
        Files.createDirectories(parent);
        Path hidden = Files.createTempDirectory(parent, "." + target.getFileName() + "-");
        return new Staging(target, hidden);
    }

    /** What a file is to hold. */
    @FunctionalInterface
    interface Content {
        /** Writes it. */
        void to(OutputStream out) throws IOException;
    }

    /**
     * Writes one file, forced to the disk, readable by its owner only. May be called by several
     * threads.
     *
     * @return where it lies until the folder is published
     */
    Path write(String name, byte[] content) throws IOException {
        return write(name, out -> out.write(content));
    }

    /** The same for content that is never in memory as a whole. */
    Path write(String name, Content content) throws IOException {
        Path file = hidden.resolve(name).normalize();
        if (!file.startsWith(hidden)) {
            throw new IllegalArgumentException("outside the batch folder: " + name);
        }
        Files.createDirectories(file.getParent());
        String sha256 = writeForced(file, content);
        synchronized (written) {
            written.put(name, new Written(Files.size(file), sha256));
        }
        return file;
    }

    /** The files written so far by name. */
    Map<String, Written> written() {
        synchronized (written) {
            return Map.copyOf(written);
        }
    }

    /** Makes the folder visible. */
    void publish() throws IOException {
        try (Stream<Path> all = Files.walk(hidden)) {
            List<Path> folders =
                    all.filter(Files::isDirectory).sorted(Comparator.reverseOrder()).toList();
            for (Path folder : folders) {
                force(folder);
            }
        }
        // A move onto an empty folder or a file would replace it silently.
        if (Files.exists(target)) {
            throw new IOException("The folder " + target + " appeared meanwhile.");
        }
        Files.move(hidden, target, StandardCopyOption.ATOMIC_MOVE);
        force(target.toAbsolutePath().getParent());
    }

    /** Writes a single file so that it appears whole or not at all, in place of an older one. */
    static void replace(Path file, byte[] content) throws IOException {
        Path parent = file.toAbsolutePath().getParent();
        Files.createDirectories(parent);
        Path hidden = Files.createTempFile(parent, "." + file.getFileName() + "-", ".part");
        try {
            writeForced(hidden, out -> out.write(content));
            Files.move(
                    hidden,
                    file,
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
            force(parent);
        } finally {
            Files.deleteIfExists(hidden);
        }
    }

    private static String writeForced(Path file, Content content) throws IOException {
        MessageDigest digest = DigestUtils.getSha256Digest();
        try (FileChannel channel =
                        FileChannel.open(
                                file,
                                StandardOpenOption.CREATE,
                                StandardOpenOption.WRITE,
                                StandardOpenOption.TRUNCATE_EXISTING);
                OutputStream out =
                        new BufferedOutputStream(
                                new DigestOutputStream(
                                        Channels.newOutputStream(channel), digest))) {
            content.to(out);
            out.flush();
            channel.force(true);
        }
        if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        }
        return Hex.encodeHexString(digest.digest());
    }

    private static void force(Path folder) throws IOException {
        // Windows cannot open a folder for this; there the rename alone has to do.
        if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
                channel.force(true);
            }
        }
    }

    @Override
    public void close() {
        if (!Files.exists(hidden)) {
            return;
        }
        try (Stream<Path> all = Files.walk(hidden)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
