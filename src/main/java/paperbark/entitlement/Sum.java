package paperbark.entitlement;

import java.math.BigDecimal;
import java.math.MathContext;
import paperbark.rules.CountRounding;

/**
 * A sum that writes itself down while it is done: each operation computes and writes at once, so
 * that the working cannot say another sum than the one that gave the number. Nothing is rounded on
 * the way; a division is kept as a fraction.
 *
 * <pre>{@code
 * Sum.of("listed", 27).times(Sum.of("years", 5)).over(Sum.of("basis", 10)).trace()
 * // 27 x 5 / 10 = 13.5
 * }</pre>
 */
final class Sum {
    /** How tightly a written sum holds together; what holds less tightly gets brackets. */
    private enum Bond {
        TERMS,
        FACTORS,
        FIGURE
    }

    private final BigDecimal numerator;
    private final BigDecimal denominator;
    private final String inWords;
    private final String inNumbers;
    private final Bond bond;

    private Sum(
            BigDecimal numerator,
            BigDecimal denominator,
            String inWords,
            String inNumbers,
            Bond bond) {
        this.numerator = numerator;
        this.denominator = denominator;
        this.inWords = inWords;
        this.inNumbers = inNumbers;
        this.bond = bond;
    }

    /**
     * A figure, not negative.
     *
     * @param name what it is, e.g. {@code SEF}
     */
    static Sum of(String name, BigDecimal figure) {
        return new Sum(figure, BigDecimal.ONE, name, plain(figure), Bond.FIGURE);
    }

    /** A whole figure, not negative. */
    static Sum of(String name, long figure) {
        return of(name, BigDecimal.valueOf(figure));
    }

    Sum plus(Sum other) {
        return written(
                numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
                denominator.multiply(other.denominator),
                " + ",
                other,
                Bond.TERMS);
    }

    Sum minus(Sum other) {
        return written(
                numerator
                        .multiply(other.denominator)
                        .subtract(other.numerator.multiply(denominator)),
                denominator.multiply(other.denominator),
                " - ",
                other,
                Bond.TERMS);
    }

    Sum times(Sum other) {
        return written(
                numerator.multiply(other.numerator),
                denominator.multiply(other.denominator),
                " x ",
                other,
                Bond.FACTORS);
    }

    /** Divided by another sum, which is not zero. */
    Sum over(Sum other) {
        if (other.numerator.signum() == 0) {
            throw new ArithmeticException(other.inWords + " is zero");
        }
        return written(
                numerator.multiply(other.denominator),
                denominator.multiply(other.numerator),
                " / ",
                other,
                Bond.FACTORS);
    }

    /** Operations of one kind are done from left to right, so only the right one needs brackets. */
    private Sum written(
            BigDecimal above, BigDecimal below, String sign, Sum other, Bond operation) {
        boolean left = bond.compareTo(operation) < 0;
        boolean right = other.bond.compareTo(operation) <= 0;
        return new Sum(
                above,
                below,
                bracketed(inWords, left) + sign + bracketed(other.inWords, right),
                bracketed(inNumbers, left) + sign + bracketed(other.inNumbers, right),
                operation);
    }

    private static String bracketed(String text, boolean brackets) {
        return brackets ? "(" + text + ")" : text;
    }

    /** The sum with names in place of numbers: {@code (abatement - SEF x Bs) x EEF}. */
    String inWords() {
        return inWords;
    }

    /** The sum and what it gives: {@code 27 x 5 / 10 = 13.5}. */
    String trace() {
        return inNumbers + " = " + plain(value());
    }

    /** The sum, what it gives, and what becomes of a fraction where there is one. */
    String trace(CountRounding rounding) {
        boolean whole = numerator.remainder(denominator).signum() == 0;
        return whole ? trace() : trace() + ", " + rounding.inWords();
    }

    /** What it gives; a fraction that never ends is cut after 16 digits. */
    BigDecimal value() {
        return denominator.equals(BigDecimal.ONE)
                ? numerator
                : numerator.divide(denominator, MathContext.DECIMAL64);
    }

    /** The whole number of certificates, made of the exact fraction. */
    int whole(CountRounding rounding) {
        return rounding.whole(numerator, denominator);
    }

    /** A decimal number without needless zeros: {@code 11.9472}. */
    static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
