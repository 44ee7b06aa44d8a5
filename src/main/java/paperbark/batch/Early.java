package paperbark.batch;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import paperbark.batch.SideProducts.Making;
import paperbark.disk.OtherThread;

/**
 * Work that may have been begun by another thread before its turn. What comes of it, and how it
 * fails, does not depend on that.
 *
 * @param work what is to be done
 * @param begun the same while it is being done; empty where its turn is waited for
 */
record Early<T>(Making<T> work, Optional<Future<T>> begun) {

    /** What comes of it. */
    T get() throws IOException {
        if (begun.isEmpty()) {
            return work.make();
        }
        try {
            return OtherThread.result(begun.get());
        } catch (OutOfMemoryError e) {
            // Other work may have had the memory.
            return work.make();
        }
    }

    /** What has come of it once nothing is done any more; otherwise where nothing has. */
    T likely(T otherwise) throws IOException {
        if (begun.isEmpty()) {
            return otherwise;
        }
        try {
            return begun.get().get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("The run was interrupted.", e);
        } catch (ExecutionException toldAtItsTurn) {
            return otherwise;
        }
    }

    /** Waits until nothing is done any more; what came of it is not wanted. */
    void end() throws IOException {
        likely(null);
    }
}
