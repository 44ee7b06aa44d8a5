package paperbark.entitlement;

import java.math.BigDecimal;
import java.math.MathContext;
import paperbark.rules.CountRounding;

/**
 * The STC sum, in whole numbers only.
 *
 * @param listingYears years that the register's figures stand for, 10
 * @param rounding what becomes of fractions
 */
record StcFormula(int listingYears, CountRounding rounding) {

    /**
     * Certificates for a job: the listed figure, times the years that count, divided by the years
     * that the listing stands for, whole.
     *
     * @param listed whole STCs on the ten-year basis
     * @param years years that count for the day of installation
     */
    int count(int listed, int years) {
        // rule: ree-regs-2001 reg 19A: the number is the register's figure for model, zone and
        // installation period.
        // rule: cer-entitlement deeming period: of it, only the years left until the end of 2030.
        // rule: swh-method-2016 rounding: whole certificates only, fractions are dropped.
        return rounding.whole((long) listed * years, listingYears);
    }

    /**
     * The highest number that the other reading of the method would give. If the register's figure
     * was itself rounded down, scaling the unrounded figure gives the same number whenever the
     * years divide the listing's years exactly (floor(floor(x) / n) = floor(x / n)).
     */
    int highest(int listed, int years) {
        int count = count(listed, years);
        // rule: how-we-read STC rounding: exact at 10, 5, 2 and 1 years, else at most one more.
        return years == 0 || listingYears % years == 0 ? count : count + 1;
    }

    /** Whether the other reading can really give more for this figure. */
    boolean canBeHigher(int listed, int years) {
        // The unrounded figure lies below listed + 1, so the sum lies below the following bound.
        long boundTimesYears = (listed + 1L) * years;
        long most = (boundTimesYears - 1) / listingYears;
        return years > 0 && listingYears % years != 0 && most > count(listed, years);
    }

    /** The sum with its numbers: {@code 27 x 5 / 10 = 13.5, fractions dropped}. */
    String working(int listed, int years) {
        long product = (long) listed * years;
        long whole = product / listingYears;
        long rest = product % listingYears;
        String exact =
                rest == 0
                        ? Long.toString(whole)
                        : new BigDecimal(product)
                                .divide(new BigDecimal(listingYears), MathContext.DECIMAL64)
                                .toPlainString();
        return "%d x %d / %d = %s%s"
                .formatted(
                        listed,
                        years,
                        listingYears,
                        exact,
                        rest == 0 ? "" : ", " + rounding.inWords());
    }
}
