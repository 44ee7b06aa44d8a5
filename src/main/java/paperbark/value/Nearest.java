package paperbark.value;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.text.similarity.DamerauLevenshteinDistance;

/** Finds the name that was probably meant. */
public final class Nearest {
    // Two letters in the wrong order are one slip, not two.
    private static final DamerauLevenshteinDistance DISTANCE = new DamerauLevenshteinDistance();

    private Nearest() {}

    /**
     * The option that differs least, if it differs in no more than a third of its letters; case
     * does not count.
     */
    public static Optional<String> to(String word, Collection<String> options) {
        return options.stream()
                .filter(
                        option ->
                                distance(word, option) * 3
                                        <= Math.max(word.length(), option.length()))
                .min(
                        Comparator.comparingInt((String option) -> distance(word, option))
                                .thenComparing(option -> option));
    }

    private static int distance(String a, String b) {
        return DISTANCE.apply(a.toLowerCase(Locale.ROOT), b.toLowerCase(Locale.ROOT));
    }
}
