package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import paperbark.output.calendar.CalendarDay;

/** A calendar does not grow with all that an office ever did. */
class NearestDaysTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 23);

    private static CalendarDay day(String name, int daysOff, boolean cancelled) {
        return new CalendarDay(name, TODAY.plusDays(daysOff), "", "", List.of(), cancelled);
    }

    private static List<String> names(int most, CalendarDay... days) {
        return NearestDays.of(List.of(days), TODAY, most).stream().map(CalendarDay::name).toList();
    }

    @Test
    void theNearestOfEachKindAreThereInTheirOrder() {
        assertThat(
                        names(
                                2,
                                day("closing J-1", -5, false),
                                day("closing J-2", 4, false),
                                day("closing J-3", 3, false),
                                day("care J-1 1", 300, false)))
                .containsExactly("closing J-2", "closing J-3", "care J-1 1");
    }

    @Test
    void whatCountsGoesBeforeWhatWasCalledOff() {
        assertThat(
                        names(
                                2,
                                day("closing J-1", 1, true),
                                day("closing J-2", 2, true),
                                day("closing J-3", 300, false)))
                .containsExactly("closing J-1", "closing J-3");
    }

    @Test
    void ofOrdinaryOfficesEveryDayIsThere() {
        List<CalendarDay> days = List.of(day("rule a", 10, false), day("rule b", 11, true));
        assertThat(NearestDays.of(days, TODAY)).isEqualTo(days);
    }
}
