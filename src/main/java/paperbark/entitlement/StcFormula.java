package paperbark.entitlement;

import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Optional;
import paperbark.rules.CountRounding;

/**
 * The STC sum.
 *
 * @param equation the equation of the day
 * @param listingYears years that the register's figures stand for, 10
 * @param rounding what becomes of fractions
 */
record StcFormula(Equation equation, int listingYears, CountRounding rounding) {

    /** How certificates follow from the listed figure, the years that count and the listing's. */
    interface Equation {
        Sum of(Sum listed, Sum years, Sum listingYears);
    }

    // rule: ree-regs-2001 reg 19A: the number is the register's figure for model, zone and
    // installation period.
    // rule: cer-entitlement deeming period: of it, only the years left until the end of 2030.
    private static final Equation SHARE_OF_THE_YEARS =
            (listed, years, listingYears) -> listed.times(years).over(listingYears);

    // rule: ree-act-2000 s 21(1): installations count from 1 Apr 2001.
    private static final List<SinceDate<Equation>> EQUATIONS =
            List.of(new SinceDate<>(LocalDate.of(2001, Month.APRIL, 1), SHARE_OF_THE_YEARS));

    /** The formula for a day of installation; empty before the first. */
    static Optional<StcFormula> on(LocalDate day, int listingYears, CountRounding rounding) {
        return SinceDate.on(EQUATIONS, day)
                .map(equation -> new StcFormula(equation, listingYears, rounding));
    }

    /** The formula for the same settings on another day. */
    Optional<StcFormula> at(LocalDate day) {
        return on(day, listingYears, rounding);
    }

    /**
     * The sum for a job.
     *
     * @param listed whole STCs on the ten-year basis
     * @param years years that count for the day of installation
     */
    Sum sum(int listed, int years) {
        return equation.of(
                Sum.of("listed", listed), Sum.of("years", years), Sum.of("basis", listingYears));
    }

    /** Certificates for a job, whole. */
    int count(int listed, int years) {
        // rule: swh-method-2016 rounding: whole certificates only, fractions are dropped.
        return sum(listed, years).whole(rounding);
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
        return sum(listed, years).trace(rounding);
    }
}
