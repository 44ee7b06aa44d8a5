package paperbark.rules;

import java.util.Arrays;
import java.util.Optional;

/** How sure we are of a rule row. */
public enum Confidence {
    /** Read in the source, whole or in an excerpt. */
    PUBLISHED("published"),
    /** Worked out from sources; the row's note says how. */
    DERIVED("derived"),
    /** From memory, not verified. */
    MEMORY("memory"),
    /** Invented for the demonstration; never in a shipped table. */
    DEMO("demo");

    private final String word;

    Confidence(String word) {
        this.word = word;
    }

    /** The word used in tables and on paper. */
    public String word() {
        return word;
    }

    static Optional<Confidence> of(String word) {
        return Arrays.stream(values()).filter(c -> c.word.equals(word)).findFirst();
    }
}
