package paperbark.disk;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/**
 * Writes files on a thread of its own: to force a file to the disk takes as long as to make a pack,
 * and keeps no processor busy.
 */
final class WritingBeside {
    // Packs are small; a disk that is slower than the processors must not have them all in memory.
    private static final int MOST_WAITING = 16;
    private static final int PATIENCE_SECONDS = 5;

    private final ExecutorService thread =
            new ThreadPoolExecutor(
                    1,
                    1,
                    1,
                    TimeUnit.SECONDS,
                    new ArrayBlockingQueue<>(MOST_WAITING),
                    new ThreadPoolExecutor.CallerRunsPolicy());
    private final Queue<Future<?>> begun = new ArrayDeque<>();

    /**
     * Begins to write a file.
     *
     * @throws IOException when an earlier one could not be written
     */
    synchronized void begin(Callable<?> writing) throws IOException {
        while (!begun.isEmpty() && begun.peek().isDone()) {
            OtherThread.result(begun.remove());
        }
        begun.add(thread.submit(writing));
    }

    /**
     * Waits until all are written.
     *
     * @throws IOException when one could not be written
     */
    synchronized void end() throws IOException {
        while (!begun.isEmpty()) {
            OtherThread.result(begun.remove());
        }
    }

    /** Whatever is not written yet is given up; none appears after this. */
    void giveUp() {
        thread.shutdownNow();
        try {
            thread.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
