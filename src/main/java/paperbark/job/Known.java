package paperbark.job;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import paperbark.sheet.ColumnNames;
import paperbark.value.Nearest;
import paperbark.value.Parsed;

/**
 * Texts that must be one of several known words or names; the nearest is offered and never taken.
 */
final class Known {
    private Known() {}

    /** One of the words, whatever its case and punctuation. */
    static <T> Parsed<T> word(String text, Map<String, T> words) {
        Map<String, T> plain =
                words.entrySet().stream()
                        .collect(
                                Collectors.toMap(
                                        e -> ColumnNames.normal(e.getKey()), Map.Entry::getValue));
        return Optional.ofNullable(plain.get(ColumnNames.normal(text)))
                .map(Parsed::ok)
                .orElseGet(
                        () ->
                                Parsed.bad(
                                        "The word is none of those that this column takes.",
                                        useOneOf(text, words.keySet())));
    }

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

    private static String useOneOf(String text, Set<String> words) {
        // Single letters and a sheet's true and false are understood, but nobody need learn them.
        List<String> shown =
                words.stream()
                        .filter(w -> w.length() > 1 && !List.of("true", "false").contains(w))
                        .sorted()
                        .toList();
        String all = String.join(", ", shown);
        return Nearest.to(text.toLowerCase(Locale.ROOT), shown)
                .map(near -> "Type \"" + near + "\" if that is meant; the words are " + all + ".")
                .orElse("Type one of these words: " + all + ".");
    }
}
