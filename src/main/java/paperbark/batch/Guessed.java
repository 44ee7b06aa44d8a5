package paperbark.batch;

import java.io.IOException;

/**
 * Work that was begun with what it will most likely be given. Where it is given something else it
 * is done again, so that the guess costs time at most.
 *
 * @param likely what it is begun with
 * @param begun the work with that
 * @param again the work with anything
 */
record Guessed<K, T>(K likely, Early<T> begun, With<K, T> again) {

    /** Work that is given something. */
    @FunctionalInterface
    interface With<K, T> {
        /** Does it. */
        T make(K given) throws IOException;
    }

    /** What comes of it with what is known at its turn. */
    T with(K given) throws IOException {
        if (likely.equals(given)) {
            return begun.get();
        }
        begun.end();
        return again.make(given);
    }
}
