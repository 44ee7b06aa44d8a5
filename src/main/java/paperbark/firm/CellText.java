package paperbark.firm;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Collectors;
import paperbark.value.ExactMoney;
import paperbark.value.Parsed;

/** Reads the texts of table cells that no value type reads. */
final class CellText {
    private static final int LONGEST_PATTERN = 100;

    private CellText() {}

    /**
     * A number of not more than six digits before and four after the point, without its end zeros.
     */
    static Parsed<BigDecimal> decimal(String text) {
        return text.matches("[0-9]{1,6}(\\.[0-9]{1,4})?")
                ? Parsed.ok(plain(new BigDecimal(text).stripTrailingZeros()))
                : Parsed.bad(
                        "The text is not a number.",
                        "Type a number such as 3.25, with at most four decimals and without a unit.");
    }

    private static BigDecimal plain(BigDecimal number) {
        return number.scale() < 0 ? number.setScale(0) : number;
    }

    /** A price with not more than four decimals. */
    static Parsed<ExactMoney> price(String text) {
        Parsed<BigDecimal> amount = decimal(text.replaceFirst("^\\$ ?", ""));
        return amount.map(ExactMoney::new);
    }

    /** Yes or no. */
    static Parsed<Boolean> yesNo(String text) {
        return Words.SHIPPED.yesNo("", text);
    }

    /** One of a fixed list of words, in any case. */
    static <E> Function<String, Parsed<E>> oneOf(E[] all, Function<E, String> word) {
        return text ->
                Arrays.stream(all)
                        .filter(e -> word.apply(e).equalsIgnoreCase(text))
                        .findFirst()
                        .map(Parsed::ok)
                        .orElseGet(
                                () ->
                                        Parsed.bad(
                                                "The word is not one that this column knows.",
                                                "Type one of: "
                                                        + Arrays.stream(all)
                                                                .map(word)
                                                                .collect(Collectors.joining("; "))
                                                        + "."));
    }

    /**
     * A regular expression that a hostile text cannot keep busy: no bracketed group is repeated,
     * and few parts may be of any length.
     */
    static Parsed<Pattern> pattern(String text) {
        if (text.length() > LONGEST_PATTERN
                || text.matches(".*\\)[*+{].*")
                || text.matches("(.*[*+]){4}.*")) {
            return Parsed.bad(
                    "The pattern is longer than "
                            + LONGEST_PATTERN
                            + " signs, repeats a bracketed group or has more than three * or +.",
                    "Write the pattern plainly, e.g. TT-[0-9]{6}.");
        }
        try {
            return Parsed.ok(Pattern.compile(text));
        } catch (PatternSyntaxException e) {
            return Parsed.bad(
                    "The pattern is not a regular expression.",
                    "Write the form of the serials as a regular expression, e.g. TT-[0-9]{6}.");
        }
    }
}
