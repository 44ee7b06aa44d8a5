package paperbark.rules;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import paperbark.rules.RuleRow.WrongCell;
import paperbark.value.Days;
import paperbark.value.State;

/**
 * A day from Monday to Friday that is no working day in a whole state. Holidays of a part of a
 * state are for the firm's own table.
 *
 * @param states where
 * @param holiday its name
 */
public record HolidayRow(List<State> states, String holiday) {
    static final TableLayout<LocalDate, HolidayRow> LAYOUT =
            new TableLayout<>(
                    "au/public-holidays.csv",
                    List.of("day"),
                    List.of("states", "holiday"),
                    List.of(),
                    HolidayRow::read,
                    LocalDate::toString);

    /** Keeps the states from being changed. */
    public HolidayRow {
        states = List.copyOf(states);
    }

    /** Whether the day is one in the state, as far as the table goes. */
    public static boolean isHoliday(
            RuleTable<LocalDate, HolidayRow> table, State state, LocalDate day) {
        return table.on(day, day).filter(row -> row.row().states().contains(state)).isPresent();
    }

    /** Whether the table has the holidays of a year, which all have a New Year's Day or two. */
    public static boolean covers(RuleTable<LocalDate, HolidayRow> table, LocalDate day) {
        return Stream.iterate(day.withDayOfYear(1), d -> d.plusDays(1))
                .limit(7)
                .anyMatch(table::knows);
    }

    private static HolidayRow read(RuleRow row) {
        if (Days.parse(row.text("day")).toOptional().isEmpty()) {
            throw new WrongCell("day \"" + row.text("day") + "\" is not a day");
        }
        List<State> states =
                Stream.of(row.text("states").split(" ")).map(HolidayRow::state).toList();
        return new HolidayRow(states, row.text("holiday"));
    }

    private static State state(String word) {
        return State.parse(word)
                .toOptional()
                .orElseThrow(() -> new WrongCell("\"" + word + "\" is no state"));
    }
}
