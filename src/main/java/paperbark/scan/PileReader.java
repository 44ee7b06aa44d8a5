package paperbark.scan;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Reads a pile of scanned pages on all cores: which page belongs where, which way up it lies, and
 * which boxes on it are empty.
 *
 * <pre>{@code
 * List<SeenPage> pages = PileReader.read(Path.of("pile.pdf"), printed, 2);
 * }</pre>
 */
public final class PileReader {
    private PileReader() {}

    /**
     * The pages of a file, in its order.
     *
     * @param workers how many threads, at least 1
     * @throws UnreadablePile when the file is no pile, damaged or too large
     * @throws IOException when it cannot be read for another reason
     */
    public static List<SeenPage> read(Path file, Printed printed, int workers) throws IOException {
        int pages;
        try (Pile pile = Pile.open(file)) {
            pages = pile.pages();
        }
        AtomicInteger next = new AtomicInteger(1);
        int threads = Math.max(1, Math.min(workers, pages));
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<List<SeenPage>>> running = new ArrayList<>();
            for (int i = 0; i < threads; i++) {
                running.add(pool.submit(() -> some(file, printed, next, pages)));
            }
            List<SeenPage> seen = new ArrayList<>();
            for (Future<List<SeenPage>> part : running) {
                seen.addAll(part.get());
            }
            seen.sort(Comparator.comparingInt(SeenPage::number));
            return seen;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("The run was interrupted.", e);
        } catch (ExecutionException e) {
            throw passedOn(e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    /** What a library stumbles over is the file's fault, a page beyond memory too. */
    private static IOException passedOn(Throwable cause) {
        if (cause instanceof IOException world) {
            return world;
        }
        if (cause instanceof OutOfMemoryError || cause instanceof StackOverflowError) {
            return Piles.damaged();
        }
        throw new IllegalStateException("A scanned page could not be looked at.", cause);
    }

    /** Each worker has the file open for itself, and takes whichever page is next. */
    private static List<SeenPage> some(Path file, Printed printed, AtomicInteger next, int pages)
            throws IOException {
        PageLook look = new PageLook(printed);
        List<SeenPage> seen = new ArrayList<>();
        try (Pile pile = Pile.open(file)) {
            for (int n = next.getAndIncrement(); n <= pages; n = next.getAndIncrement()) {
                seen.add(look.at(n, pile.picture(n)));
            }
        }
        return seen;
    }
}
