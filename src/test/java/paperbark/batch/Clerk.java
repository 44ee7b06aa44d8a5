package paperbark.batch;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.entitlement.PrintedSum;

/** Redoes printed sums as a clerk with a pocket calculator does. */
final class Clerk {
    private static final Pattern EQUATION =
            Pattern.compile("(\\(*[0-9][0-9.()x/+ -]*) = ([0-9.]+)(?: t)?((?:, [a-z][a-z ]+)*)");
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

    /**
     * A printed sum.
     *
     * @param sum left of the equals sign
     * @param printed right of it
     * @param words what is done with a fraction
     */
    record Equation(String sum, BigDecimal printed, String words) {
        BigDecimal redone() {
            return PrintedSum.value(sum, MathContext.DECIMAL64);
        }

        BigDecimal whole() {
            return Clerk.whole(redone(), words);
        }
    }

    private Clerk() {}

    /** Every sum in a cell. */
    static List<Equation> equations(String working) {
        List<Equation> equations = new ArrayList<>();
        Matcher found = EQUATION.matcher(working);
        while (found.find()) {
            equations.add(
                    new Equation(
                            found.group(1).strip(),
                            new BigDecimal(found.group(2)),
                            found.group(3)));
        }
        return equations;
    }

    /** The whole number that the printed words make of a fraction; never less than nothing. */
    static BigDecimal whole(BigDecimal exact, String words) {
        RoundingMode mode =
                words.contains("fractions dropped")
                        ? RoundingMode.FLOOR
                        : words.contains("to the nearest whole, a half up")
                                ? RoundingMode.HALF_UP
                                : RoundingMode.UNNECESSARY;
        return exact.setScale(0, mode).max(BigDecimal.ZERO);
    }

    static LocalDate day(String printed) {
        return LocalDate.parse(printed, DAY);
    }

    static String day(LocalDate day) {
        return DAY.format(day);
    }
}
