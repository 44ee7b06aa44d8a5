package paperbark.batch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A folder under a hidden name that becomes visible, whole, by one rename on the same file system.
 * Whatever is left of it when closed without that is deleted.
 */
final class Staging implements AutoCloseable {
    private final Path target;
    private final Path hidden;
    private final Map<String, Written> written = new TreeMap<>();
    private boolean kept;

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

    /** Writes one file, forced to the disk, readable by its owner only. */
    synchronized void write(String name, byte[] content) throws IOException {
        Path file = hidden.resolve(name).normalize();
        if (!file.startsWith(hidden)) {
            throw new IllegalArgumentException("outside the batch folder: " + name);
        }
        Files.createDirectories(file.getParent());
        writeForced(file, content);
        written.put(name, new Written(content.length, Hashes.sha256(content)));
    }

    /** The files written so far by name. */
    synchronized Map<String, Written> written() {
        return Map.copyOf(written);
    }

    /** The folder as it lies hidden; it becomes {@code target}. */
    Path toPublish() {
        return hidden.toAbsolutePath();
    }

    /** From now on the folder is not deleted, whatever happens: the batch counts as claimed. */
    void keep() {
        kept = true;
    }

    /** Forces the folder to the disk, so that it survives a cut of power from here on. */
    void settle() throws IOException {
        forceAll(hidden);
        force(hidden.toAbsolutePath().getParent());
    }

    /** Makes the folder visible. */
    void publish() throws IOException {
        forceAll(hidden);
        show(hidden, target);
    }

    /**
     * Publishes a folder that an earlier run left hidden.
     *
     * @param hidden path of the hidden folder
     * @param name name under which it appears beside it
     * @param manifestSha256 hash of its manifest, which makes sure that it is that folder
     * @return whether the folder is there now, from this or an earlier run
     */
    static boolean finish(String hidden, String name, String manifestSha256) throws IOException {
        Path from = Path.of(hidden);
        Path to = from.resolveSibling(name);
        if (isOf(to, manifestSha256)) {
            return true;
        }
        if (!isOf(from, manifestSha256)) {
            return false;
        }
        show(from, to);
        return true;
    }

    private static boolean isOf(Path folder, String manifestSha256) throws IOException {
        Path manifest = folder.resolve("manifest.json");
        return Files.isRegularFile(manifest) && Hashes.sha256(manifest).equals(manifestSha256);
    }

    private static void forceAll(Path hidden) throws IOException {
        try (Stream<Path> all = Files.walk(hidden)) {
            List<Path> folders =
                    all.filter(Files::isDirectory).sorted(Comparator.reverseOrder()).toList();
            for (Path folder : folders) {
                force(folder);
            }
        }
    }

    private static void show(Path hidden, Path target) throws IOException {
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
            writeForced(hidden, content);
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

    private static void writeForced(Path file, byte[] content) throws IOException {
        try (FileChannel channel =
                FileChannel.open(
                        file,
                        StandardOpenOption.CREATE,
                        StandardOpenOption.WRITE,
                        StandardOpenOption.TRUNCATE_EXISTING)) {
            ByteBuffer buffer = ByteBuffer.wrap(content);
            while (buffer.hasRemaining()) {
                channel.write(buffer);
            }
            channel.force(true);
        }
        if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        }
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
        if (kept || !Files.exists(hidden)) {
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
