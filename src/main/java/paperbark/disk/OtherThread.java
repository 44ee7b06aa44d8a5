package paperbark.disk;

import java.io.IOException;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;

/** Work that another thread does, and how its failing reaches whoever waits for it. */
public final class OtherThread {
    private OtherThread() {}

    /**
     * Begins work that somebody waits for; the program does not go on for its sake.
     *
     * @param name what it is, for whoever looks at the threads
     */
    public static <T> Future<T> begin(String name, Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        Thread thread = new Thread(task, name);
        thread.setDaemon(true);
        thread.start();
        return task;
    }

    /**
     * Waits for what comes of it.
     *
     * @throws IOException where the work failed so, or where waiting for it was interrupted
     */
    public static <T> T result(Future<T> work) throws IOException {
        try {
            return work.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("The run was interrupted.", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof IOException disk) {
                throw disk;
            }
            if (e.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw new IllegalStateException(e.getCause());
        }
    }
}
