package paperbark.disk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import paperbark.fault.FaultPoint;

/**
 * A folder under a hidden name that becomes visible, whole, by one rename on the same file system.
 * Whatever is left of it when closed without that is deleted.
 */
public final class Staging implements AutoCloseable {
    private static final int ATTEMPTS = 50;

    private final Path target;
    private final Path hidden;
    private final Map<String, Written> written = new TreeMap<>();
    private final WritingBeside beside = new WritingBeside();
    private final Thread atTheEnd = new Thread(this::endNow, "staging");
    private boolean kept;
    private boolean ended;

    /** A file as it was written. */
    public record Written(long bytes, String sha256) {}

    private Staging(Path target, Path hidden) {
        this.target = target;
        this.hidden = hidden;
    }

    /** Prepares to publish a folder that must not exist yet. */
    public static Staging of(Path target) throws IOException {
        Path parent = target.getParent();
        Disk.makeFolders(parent);
        Path hidden = Files.createTempDirectory(parent, "." + target.getFileName() + "-");
        Rights.ofFolderAround(hidden);
        Staging staging = new Staging(target, hidden);
        try {
            Runtime.getRuntime().addShutdownHook(staging.atTheEnd);
        } catch (IllegalStateException endsAlready) {
            Disk.delete(hidden);
            throw new IOException("The program was told to end.", endsAlready);
        }
        return staging;
    }

    /** A process that is told to end leaves no pack behind that is nobody's. */
    private void endNow() {
        synchronized (this) {
            if (kept) {
                return;
            }
            ended = true;
        }
        for (int attempt = 0; attempt < ATTEMPTS && Files.exists(hidden); attempt++) {
            try {
                Disk.delete(hidden);
            } catch (IOException | RuntimeException again) {
                // A paper that is being written still; what is left the next start clears.
            }
        }
    }

    private synchronized void goOn() throws IOException {
        if (ended) {
            throw new IOException("The program was told to end.");
        }
    }

    /**
     * Writes one file, forced to the disk, with the rights of the folder. May be called by several
     * threads.
     *
     * @return where it lies until the folder is published
     */
    public Path write(String name, byte[] content) throws IOException {
        return write(name, out -> out.write(content));
    }

    /** The same for content that is never in memory as a whole. */
    public Path write(String name, Disk.Content content) throws IOException {
        goOn();
        Path file = place(name);
        Disk.makeFolders(file.getParent());
        String sha256;
        try {
            sha256 = Disk.write(file, content);
        } catch (IOException | RuntimeException | Error e) {
            // Half a file must not be published when somebody goes on without it.
            Files.deleteIfExists(file);
            throw e;
        }
        FaultPoint.PAPER.reach();
        synchronized (written) {
            written.put(name, new Written(Files.size(file), sha256));
        }
        return file;
    }

    /**
     * The same while the caller goes on; the file is there after {@link #endWriting}.
     *
     * @throws IOException when an earlier file could not be written
     */
    public Path beginToWrite(String name, byte[] content) throws IOException {
        Path file = place(name);
        beside.begin(() -> write(name, content));
        return file;
    }

    /**
     * Waits for what was begun.
     *
     * @throws IOException when a file could not be written
     */
    public void endWriting() throws IOException {
        beside.end();
    }

    private Path place(String name) {
        Path file = hidden.resolve(name).normalize();
        if (!file.startsWith(hidden)) {
            throw new IllegalArgumentException("outside the batch folder: " + name);
        }
        return file;
    }

    /** The files written so far by name. */
    public Map<String, Written> written() {
        synchronized (written) {
            return Map.copyOf(written);
        }
    }

    /** The folder as it lies hidden; it becomes {@code target}. */
    public Path toPublish() {
        return hidden;
    }

    /**
     * From now on the folder is not deleted, whatever happens: the batch may count as claimed.
     *
     * @throws IOException when the process was told to end and the folder is going
     */
    public synchronized void keep() throws IOException {
        goOn();
        kept = true;
    }

    /** Takes that back: nothing of the batch was taken in. */
    public synchronized void keepNot() {
        kept = false;
    }

    /** Forces the folder to the disk, so that it survives a cut of power from here on. */
    public void settle() throws IOException {
        Disk.forceAll(hidden);
        Disk.force(hidden.getParent());
    }

    /** Makes the folder visible. */
    public void publish() throws IOException {
        Disk.forceAll(hidden);
        Disk.move(hidden, target);
    }

    /**
     * Publishes a folder that an earlier run left hidden.
     *
     * @param hidden path of the hidden folder
     * @param name name under which it appears beside it
     * @param manifestSha256 hash of its manifest, which makes sure that it is that folder
     * @return whether the folder is there now, from this or an earlier run
     */
    public static boolean finish(Path hidden, String name, String manifestSha256)
            throws IOException {
        Path to = hidden.resolveSibling(name);
        if (isOf(to, manifestSha256)) {
            return true;
        }
        if (!isOf(hidden, manifestSha256)) {
            return false;
        }
        Disk.move(hidden, to);
        return true;
    }

    private static boolean isOf(Path folder, String manifestSha256) throws IOException {
        Path manifest = folder.resolve("manifest.json");
        return Files.isRegularFile(manifest) && Hashes.sha256(manifest).equals(manifestSha256);
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(atTheEnd);
        } catch (IllegalStateException ending) {
            // It does its work just now.
        }
        beside.giveUp();
        if (kept || !Files.exists(hidden)) {
            return;
        }
        try {
            Disk.delete(hidden);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
