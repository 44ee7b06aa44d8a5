package paperbark.output.calendar;

import java.time.LocalDate;
import java.util.List;

/**
 * A whole day in the office's calendar.
 *
 * @param name what makes it the same day in every later file, e.g. {@code licence VIC 12345}
 * @param day the day
 * @param title in a few words
 * @param text what is to be done
 * @param warnings so many days before it there is a warning
 * @param cancelled whether it counts no longer
 */
public record CalendarDay(
        String name,
        LocalDate day,
        String title,
        String text,
        List<Integer> warnings,
        boolean cancelled) {

    /** Keeps the list from being changed. */
    public CalendarDay {
        warnings = List.copyOf(warnings);
    }

    /** What the name begins with, such as {@code licence}. */
    public String kind() {
        return name.substring(0, name.indexOf(' '));
    }
}
