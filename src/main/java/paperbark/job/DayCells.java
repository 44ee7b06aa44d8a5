package paperbark.job;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.value.Days;

/** Which days a register can mean, and days that a spreadsheet left as a plain count. */
final class DayCells {
    // A date outside is a slip of the keyboard or a wrong day count, not a job.
    private static final LocalDate EARLIEST = LocalDate.of(2000, 1, 1);
    private static final int DAYS_AHEAD = 400;
    // Day counts of 1954 to 2119: other numbers of five digits are no dates of jobs.
    private static final int FIRST_DAY_COUNT = 20_000;
    private static final int LAST_DAY_COUNT = 80_000;
    private static final LocalDate DAY_ZERO = LocalDate.of(1899, 12, 30);
    private static final LocalDate DAY_ZERO_1904 = LocalDate.of(1904, 1, 1);

    private DayCells() {}

    static boolean canBeMeant(LocalDate day, LocalDate today) {
        return !day.isBefore(EARLIEST) && !day.isAfter(today.plusDays(DAYS_AHEAD));
    }

    static String outOfRange(LocalDate day, LocalDate today) {
        return "The date %s is not between %s and %s."
                .formatted(
                        Days.show(day), Days.show(EARLIEST), Days.show(today.plusDays(DAYS_AHEAD)));
    }

    /**
     * The day of a plain number, counted as spreadsheets do; also from a CSV file, which keeps it
     * as text.
     */
    static Optional<LocalDate> dayCount(String text, boolean from1904) {
        return Optional.of(text)
                .filter(t -> t.matches("[0-9]{5}"))
                .map(Integer::parseInt)
                .filter(count -> count >= FIRST_DAY_COUNT && count <= LAST_DAY_COUNT)
                .map((from1904 ? DAY_ZERO_1904 : DAY_ZERO)::plusDays);
    }
}
