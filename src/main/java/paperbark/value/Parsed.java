package paperbark.value;

import java.util.Optional;
import java.util.function.Function;

/**
 * What came of reading a text as a value: the value, or what is wrong with the text and what to do.
 *
 * @param <T> the kind of value
 */
public sealed interface Parsed<T> {

    /** The value. */
    record Ok<T>(T value) implements Parsed<T> {}

    /**
     * No value.
     *
     * @param fact one sentence of what is wrong
     * @param remedy one imperative sentence of what to do
     */
    record Bad<T>(String fact, String remedy) implements Parsed<T> {}

    /** A value that was read. */
    static <T> Parsed<T> ok(T value) {
        return new Ok<>(value);
    }

    /** A text that cannot be the value. */
    static <T> Parsed<T> bad(String fact, String remedy) {
        return new Bad<>(fact, remedy);
    }

    /** The value, or empty. */
    default Optional<T> toOptional() {
        return this instanceof Ok<T> ok ? Optional.of(ok.value()) : Optional.empty();
    }

    /** The same outcome with the value changed. */
    default <R> Parsed<R> map(Function<T, R> change) {
        if (this instanceof Ok<T> ok) {
            return ok(change.apply(ok.value()));
        }
        Bad<T> bad = (Bad<T>) this;
        return bad(bad.fact(), bad.remedy());
    }
}
