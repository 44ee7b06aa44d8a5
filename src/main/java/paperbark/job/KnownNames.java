package paperbark.job;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import paperbark.value.Nearest;
import paperbark.value.Parsed;

/** Names that a table must know; the nearest is offered and never taken. */
final class KnownNames {
    private KnownNames() {}

    /** Something that a table knows by name. */
    static <T> Parsed<T> name(
            String text,
            Function<String, Optional<T>> lookup,
            Supplier<List<String>> names,
            String table) {
        return lookup.apply(text)
                .map(Parsed::ok)
                .orElseGet(
                        () ->
                                Parsed.bad(
                                        "The " + table + " has no \"" + text + "\".",
                                        correct(text, names.get(), table)));
    }

    private static String correct(String text, List<String> names, String table) {
        return Nearest.to(text, names)
                .map(
                        near ->
                                "Type \""
                                        + near
                                        + "\" if that is meant, or add a row to the "
                                        + table
                                        + ".")
                .orElse("Correct the name, or add a row to the " + table + ".");
    }
}
