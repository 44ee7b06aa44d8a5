package paperbark.batch;

import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import paperbark.batch.SideProducts.Making;

/** Threads that begin work before its turn, in the order in which it is handed to them. */
final class Workers implements AutoCloseable {
    // What takes longer to notice that it is to end is left alone.
    private static final int PATIENCE_SECONDS = 5;

    private final Optional<ExecutorService> pool;

    /**
     * So many threads.
     *
     * @param count with one or less nothing is begun before its turn
     */
    Workers(int count) {
        pool = count > 1 ? Optional.of(Executors.newFixedThreadPool(count)) : Optional.empty();
    }

    private Workers(Optional<ExecutorService> pool) {
        this.pool = pool;
    }

    /**
     * One thread beside the caller's.
     *
     * @param threads how many there may be; with one nothing is begun before its turn
     */
    static Workers beside(int threads) {
        return new Workers(
                threads > 1 ? Optional.of(Executors.newSingleThreadExecutor()) : Optional.empty());
    }

    /** Begins a piece of work, which must not need any other that is begun. */
    <T> Early<T> begin(Making<T> work) {
        return new Early<>(work, pool.map(p -> p.submit(work::make)));
    }

    /**
     * Begins it with a guess.
     *
     * @param likely what it will most likely be given
     */
    <K, T> Guessed<K, T> begin(K likely, Guessed.With<K, T> work) {
        return new Guessed<>(likely, begin(() -> work.make(likely)), work);
    }

    /** Whatever is not done yet is given up. */
    @Override
    public void close() {
        if (pool.isPresent()) {
            pool.get().shutdownNow();
            try {
                // A file that is being written must not appear where others are being cleared.
                pool.get().awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
