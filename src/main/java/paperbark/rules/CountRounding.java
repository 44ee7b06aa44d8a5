package paperbark.rules;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Optional;

/** How a scheme makes a whole number of certificates of a fraction; a dated setting. */
public enum CountRounding {
    /** Fractions are dropped. */
    DOWN("down", RoundingMode.FLOOR, "fractions dropped"),
    /** To the nearest whole number, a half up. */
    HALF_UP("half-up", RoundingMode.HALF_UP, "rounded to the nearest whole, a half up");

    private final String word;
    private final RoundingMode mode;
    private final String inWords;

    CountRounding(String word, RoundingMode mode, String inWords) {
        this.word = word;
        this.mode = mode;
        this.inWords = inWords;
    }

    /** What it does, for the working. */
    public String inWords() {
        return inWords;
    }

    /** The whole number for an exact one; less than nothing counts as nothing. */
    public int whole(BigDecimal exact) {
        return whole(exact, BigDecimal.ONE);
    }

    /** The whole number for an exact fraction; less than nothing counts as nothing. */
    public int whole(BigDecimal numerator, BigDecimal denominator) {
        return numerator.divide(denominator, 0, mode).max(BigDecimal.ZERO).intValueExact();
    }

    static Optional<CountRounding> of(String word) {
        return Arrays.stream(values()).filter(r -> r.word.equals(word)).findFirst();
    }
}
