package paperbark.firm;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.function.Predicate;
import paperbark.value.State;
import paperbark.value.Trade;

/**
 * A certificate that a state asks of a licensed trade. Paperbark tracks it and never prints
 * anything that looks like it.
 *
 * @param state where
 * @param trade of whom
 * @param document what it is called
 * @param months how many months after completion it is due; 0 where it is days that count
 * @param days how many days after completion it is due; 0 where no figure was found
 * @param workingDays whether only Monday to Friday count, public holidays left out
 * @param source where the figure was read
 */
public record StatePaper(
        State state,
        Trade trade,
        String document,
        int months,
        int days,
        boolean workingDays,
        String source) {

    /** Whether a figure was found. */
    public boolean hasTime() {
        return months + days > 0;
    }

    /** How long there is, such as {@code 5 working days}. */
    public String time() {
        if (months > 0) {
            return months == 1 ? "1 month" : months + " months";
        }
        return days + (workingDays ? " working days" : " days");
    }

    /**
     * The last day for work completed on the given day; meaningless without {@link #hasTime}.
     *
     * @param holiday whether a day is a public holiday in the state
     */
    public LocalDate dueAfter(LocalDate completed, Predicate<LocalDate> holiday) {
        if (!workingDays) {
            return completed.plusMonths(months).plusDays(days);
        }
        LocalDate day = completed;
        for (int left = days; left > 0; ) {
            day = day.plusDays(1);
            if (day.getDayOfWeek() != DayOfWeek.SATURDAY
                    && day.getDayOfWeek() != DayOfWeek.SUNDAY
                    && !holiday.test(day)) {
                left--;
            }
        }
        return day;
    }
}
