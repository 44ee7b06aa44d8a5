package paperbark.disk;

import java.io.IOException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;

/** Work that another thread does, and how its failing reaches whoever waits for it. */
public final class OtherThread {
    private OtherThread() {}

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
