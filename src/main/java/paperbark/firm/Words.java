package paperbark.firm;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import paperbark.sheet.ColumnNames;
import paperbark.value.Nearest;
import paperbark.value.Parsed;

/**
 * The words that people use where an answer is one of a few: those that ship with the program and
 * those that the firm teaches it. Case, spaces and punctuation do not count, and a word is never
 * guessed.
 */
public final class Words {
    /** The words that ship with the program. */
    public static final Words SHIPPED = WordsTable.shipped();

    private static final String YES_NO = "yes-no";

    private record Word(String written, String ours) {}

    /** By field, then by the word as compared. */
    private final Map<String, Map<String, Word>> words = new LinkedHashMap<>();

    /** No words. */
    Words() {}

    /** The same words, to be added to. */
    Words(Words others) {
        others.words.forEach((field, all) -> words.put(field, new HashMap<>(all)));
    }

    /** Adds a word, or gives one another meaning. */
    void teach(String field, String word, String ours) {
        words.computeIfAbsent(field, f -> new LinkedHashMap<>())
                .put(ColumnNames.normal(word), new Word(word, ours));
    }

    /** The fields that have words. */
    public Collection<String> fields() {
        return words.keySet();
    }

    /** Our words for a field. */
    public Collection<String> answers(String field) {
        return new LinkedHashSet<>(of(field).map(Word::ours).toList());
    }

    /** One of a few answers that go by our words. */
    public <T> Parsed<T> read(String field, String text, T[] answers, Function<T, String> ours) {
        return Arrays.stream(answers)
                .filter(answer -> meant(field, text).equals(Optional.of(ours.apply(answer))))
                .findFirst()
                .map(Parsed::ok)
                .orElseGet(() -> unknown(text, Arrays.stream(answers).map(ours), field));
    }

    /** Yes or no, in the words of any such question or of this one alone. */
    public Parsed<Boolean> yesNo(String field, String text) {
        return meant(field, text)
                .or(() -> meant(YES_NO, text))
                .map(answer -> Parsed.ok(answer.equals("yes")))
                .orElseGet(() -> unknown(text, Stream.of("yes", "no"), field));
    }

    private Stream<Word> of(String field) {
        return words.getOrDefault(field, Map.of()).values().stream();
    }

    private Optional<String> meant(String field, String text) {
        return Optional.ofNullable(
                        words.getOrDefault(field, Map.of()).get(ColumnNames.normal(text)))
                .map(Word::ours);
    }

    private <T> Parsed<T> unknown(String text, Stream<String> answers, String field) {
        String all = String.join("; ", answers.filter(a -> !a.isEmpty()).toList());
        return Parsed.bad(
                "The word is none of those that this column takes.",
                Nearest.to(text.toLowerCase(Locale.ROOT), of(field).map(Word::written).toList())
                                .map(n -> "Type \"" + n + "\" if that is meant; the words are ")
                                .orElse("Type one of these words: ")
                        + all
                        + "; the words table can teach others.");
    }
}
