package paperbark.disk;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.ClosedWatchServiceException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * Waits for changes in a folder and all below it. Names, sizes and times are compared, so that it
 * works on network shares too; a notice of the file system only shortens the wait.
 */
public final class FolderChanges implements Closeable {
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(500);

    // Editors write a file in several steps; it is read once it has been left alone for so long.
    private static final Duration STEADY = Duration.ofMillis(80);

    private final Path folder;
    private final Optional<WatchService> notices;
    private Map<Path, List<Object>> seen;

    /**
     * Begins to watch.
     *
     * @param folder an existing folder
     * @param withNotices whether to ask the file system for notices
     * @throws IOException when the folder cannot be read
     */
    public FolderChanges(Path folder, boolean withNotices) throws IOException {
        this.folder = folder;
        notices = withNotices ? watchService(folder) : Optional.empty();
        seen = look();
    }

    private static Optional<WatchService> watchService(Path folder) {
        try {
            return Optional.of(folder.getFileSystem().newWatchService());
        } catch (IOException | UnsupportedOperationException e) {
            return Optional.empty();
        }
    }

    /**
     * Waits until something was made, changed or deleted and then left alone.
     *
     * @throws InterruptedException when the thread is interrupted, which ends the waiting
     * @throws IOException when the folder is gone
     */
    public void await() throws IOException, InterruptedException {
        Map<Path, List<Object>> now = look();
        while (now.equals(seen)) {
            pause();
            now = look();
        }
        Map<Path, List<Object>> before = Map.of();
        while (!now.equals(before)) {
            Thread.sleep(STEADY.toMillis());
            before = now;
            now = look();
        }
        seen = now;
    }

    private void pause() throws InterruptedException {
        if (notices.isEmpty()) {
            Thread.sleep(BETWEEN_LOOKS.toMillis());
            return;
        }
        try {
            WatchKey key = notices.get().poll(BETWEEN_LOOKS.toMillis(), TimeUnit.MILLISECONDS);
            if (key != null) {
                key.pollEvents();
                key.reset();
            }
        } catch (ClosedWatchServiceException e) {
            throw new InterruptedException("closed");
        }
    }

    private Map<Path, List<Object>> look() throws IOException {
        return stamps(folder, this::listenTo);
    }

    /**
     * Size and time of every file in a folder and below it, or of one file.
     *
     * @throws IOException when it cannot be read
     */
    public static Map<Path, List<Object>> stamps(Path folder) throws IOException {
        return stamps(folder, below -> {});
    }

    private static Map<Path, List<Object>> stamps(Path folder, Consumer<Path> folders)
            throws IOException {
        Map<Path, List<Object>> all = new TreeMap<>();
        try (Stream<Path> below = Files.walk(folder)) {
            for (Path path : below.toList()) {
                note(path, all, folders);
            }
        } catch (UncheckedIOException e) {
            // A folder that went while it was walked; the next look tells.
            if (!Files.isDirectory(folder)) {
                throw e.getCause();
            }
        }
        return all;
    }

    private static void note(Path path, Map<Path, List<Object>> all, Consumer<Path> folders)
            throws IOException {
        try {
            BasicFileAttributes is = Files.readAttributes(path, BasicFileAttributes.class);
            if (is.isDirectory()) {
                folders.accept(path);
            } else {
                all.put(path, List.of(is.size(), is.lastModifiedTime()));
            }
        } catch (NoSuchFileException e) {
            // Gone meanwhile, which is a change of its own.
        }
    }

    private void listenTo(Path path) {
        if (notices.isPresent()) {
            try {
                path.register(
                        notices.get(),
                        StandardWatchEventKinds.ENTRY_CREATE,
                        StandardWatchEventKinds.ENTRY_MODIFY,
                        StandardWatchEventKinds.ENTRY_DELETE);
            } catch (IOException e) {
                // Without notices of this folder the looks have to do.
            }
        }
    }

    @Override
    public void close() throws IOException {
        if (notices.isPresent()) {
            notices.get().close();
        }
    }
}
