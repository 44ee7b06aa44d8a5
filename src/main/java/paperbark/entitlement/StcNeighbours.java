package paperbark.entitlement;

import java.time.LocalDate;
import java.time.Month;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.job.Field;
import paperbark.rules.CountRounding;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.Unkeyed;
import paperbark.rules.YearsRow;
import paperbark.value.Days;

/**
 * How far the number moves for another year of installation.
 *
 * @param working where steps and findings go
 * @param rules the rules
 * @param formula the sum on the day of the job
 */
record StcNeighbours(Working working, Rulebook rules, StcFormula formula) {
    // Visits slip by days over the holidays; within these, somebody should know of the boundary.
    private static final MonthDay YEAR_END = MonthDay.of(12, 29);
    private static final MonthDay YEAR_START = MonthDay.of(1, 3);

    /** Adds the step for the neighbouring years, and a note near the turn of the year. */
    void compare(LocalDate day, int listed) {
        CountRounding rounding = formula.rounding();
        List<String> sums = new ArrayList<>();
        List<String> counts = new ArrayList<>();
        List<RuleRef> refs = new ArrayList<>();
        for (int year : new int[] {day.getYear() - 1, day.getYear() + 1}) {
            LocalDate other = LocalDate.of(year, Month.JULY, 1);
            years(other)
                    .ifPresent(
                            years ->
                                    formula.at(other)
                                            .map(f -> f.sum(listed, years.row().years()))
                                            .ifPresent(
                                                    sum -> {
                                                        sums.add(
                                                                "installed in %d: %s"
                                                                        .formatted(
                                                                                year,
                                                                                sum.trace(
                                                                                        rounding)));
                                                        counts.add(
                                                                "%d in %d"
                                                                        .formatted(
                                                                                sum.whole(rounding),
                                                                                year));
                                                        refs.add(years.ref());
                                                    }));
        }
        if (!sums.isEmpty()) {
            working.step(
                    "In the neighbouring years",
                    String.join("; ", sums),
                    String.join(", ", counts),
                    refs.toArray(RuleRef[]::new));
        }
        across(day).ifPresent(other -> note(day, other, listed));
    }

    /** The nearest day on the other side of the year's turn, where the day lies close to it. */
    private static Optional<LocalDate> across(LocalDate day) {
        MonthDay within = MonthDay.from(day);
        if (!within.isBefore(YEAR_END)) {
            return Optional.of(LocalDate.of(day.getYear() + 1, 1, 1));
        }
        return within.isAfter(YEAR_START)
                ? Optional.empty()
                : Optional.of(LocalDate.of(day.getYear() - 1, 12, 31));
    }

    private void note(LocalDate day, LocalDate other, int listed) {
        Optional<Dated<YearsRow>> here = years(day);
        Optional<Dated<YearsRow>> there = years(other);
        Optional<StcFormula> formulaThere = formula.at(other);
        if (here.isEmpty() || there.isEmpty() || formulaThere.isEmpty()) {
            return;
        }
        int count = formula.count(listed, here.get().row().years());
        int otherCount = formulaThere.get().count(listed, there.get().row().years());
        if (count != otherCount) {
            Field field = working.dayField();
            working.report(
                    working.at(
                                    field,
                                    FindingCode.YEAR_BOUNDARY,
                                    "On %s the job earns %d STCs; on %s it would earn %d."
                                            .formatted(
                                                    Days.show(day),
                                                    count,
                                                    Days.show(other),
                                                    otherCount),
                                    "Make sure of the day on which hot water first flowed.")
                            .seeing(Days.show(day))
                            .by(here.get().ref()));
        }
    }

    private Optional<Dated<YearsRow>> years(LocalDate day) {
        return rules.years().on(day, Unkeyed.ALL);
    }
}
