package paperbark.sheet;

import java.time.LocalDate;
import java.util.Optional;

/** Days that a spreadsheet left as a plain count. */
final class DayCount {
    // Day counts of 1954 to 2119: other numbers of five digits are no dates of jobs.
    private static final int FIRST = 20_000;
    private static final int LAST = 80_000;
    private static final LocalDate DAY_ZERO = LocalDate.of(1899, 12, 30);
    private static final LocalDate DAY_ZERO_1904 = LocalDate.of(1904, 1, 1);

    private DayCount() {}

    /** The day, counted as spreadsheets do; also from a CSV file, which keeps it as text. */
    static Optional<LocalDate> day(String text, boolean from1904) {
        return Optional.of(text)
                .filter(t -> t.matches("[0-9]{5}"))
                .map(Integer::parseInt)
                .filter(count -> count >= FIRST && count <= LAST)
                .map((from1904 ? DAY_ZERO_1904 : DAY_ZERO)::plusDays);
    }
}
