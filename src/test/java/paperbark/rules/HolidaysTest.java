package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;

import de.focus_shift.jollyday.core.HolidayCalendar;
import de.focus_shift.jollyday.core.HolidayManager;
import de.focus_shift.jollyday.core.ManagerParameters;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import paperbark.firm.StatePaper;
import paperbark.value.State;
import paperbark.value.Trade;

/** The table of public holidays, held against what the library Jollyday knows of them. */
class HolidaysTest {
    private static final RuleTable<LocalDate, HolidayRow> TABLE =
            Rulebook.load(Optional.empty()).holidays();

    @Test
    void everyHolidayIsOneThatAnotherKnowsToo() {
        HolidayManager others =
                HolidayManager.getInstance(ManagerParameters.create(HolidayCalendar.AUSTRALIA));
        Set<String> alone = new TreeSet<>();
        Set<String> missing = new TreeSet<>();
        for (State state : State.values()) {
            for (LocalDate day = LocalDate.of(2026, 1, 1);
                    day.getYear() < 2028;
                    day = day.plusDays(1)) {
                boolean workday =
                        day.getDayOfWeek() != DayOfWeek.SATURDAY
                                && day.getDayOfWeek() != DayOfWeek.SUNDAY;
                boolean here = HolidayRow.isHoliday(TABLE, state, day);
                LocalDate on = day;
                boolean there =
                        others.getHolidays(on, on, state.name().toLowerCase(Locale.ROOT)).stream()
                                .anyMatch(h -> h.getDate().equals(on));
                if (here && !there) {
                    alone.add(state + " " + day);
                }
                if (workday && there && !here) {
                    missing.add(state + " " + day);
                }
            }
        }
        assertThat(alone).isEmpty();
        // Left out, so that no day is counted too few: what holds for banks or offices alone (New
        // South
        // Wales, Tasmania), not in all of the state, or on a day that is fixed late (Victoria).
        assertThat(missing)
                .containsExactly(
                        "NSW 2026-08-03",
                        "NSW 2027-08-02",
                        "TAS 2026-04-07",
                        "TAS 2027-03-30",
                        "VIC 2026-09-25",
                        "VIC 2026-11-03",
                        "VIC 2027-09-24",
                        "VIC 2027-11-02");
    }

    @Test
    void workingDaysLeaveOutTheHolidaysOfTheState() {
        StatePaper paper =
                new StatePaper(State.WA, Trade.PLUMBING, "Certificate", 0, 5, true, "a page");
        LocalDate done = LocalDate.of(2026, 9, 24);
        // The King's Birthday of 28 September is one in Western Australia only.
        assertThat(paper.dueAfter(done, d -> HolidayRow.isHoliday(TABLE, State.WA, d)))
                .isEqualTo(LocalDate.of(2026, 10, 2));
        assertThat(paper.dueAfter(done, d -> HolidayRow.isHoliday(TABLE, State.VIC, d)))
                .isEqualTo(LocalDate.of(2026, 10, 1));
    }

    @Test
    void aYearThatIsNotInTheTableIsTold() {
        List.of(2026, 2027)
                .forEach(y -> assertThat(HolidayRow.covers(TABLE, LocalDate.of(y, 6, 1))).isTrue());
        assertThat(HolidayRow.covers(TABLE, LocalDate.of(2028, 6, 1))).isFalse();
    }
}
