package paperbark.office;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import paperbark.output.calendar.CalendarDay;

/**
 * What of an office's days its calendar has: of each kind as many as programs take in without
 * trouble. Those that count go before those that were called off, then the nearest before those
 * that are further off or longer over. Each new day brings the next ones in.
 */
final class NearestDays {
    // No source: some 2 to 3 MB of a kind, and all days of an office of 4,000 jobs a year.
    private static final int MOST = 5_000;

    private NearestDays() {}

    /** The days that the calendar has, in the order in which they came. */
    static List<CalendarDay> of(List<CalendarDay> days, LocalDate today) {
        return of(days, today, MOST);
    }

    /** The same with so many of each kind. */
    static List<CalendarDay> of(List<CalendarDay> days, LocalDate today, int most) {
        Map<String, List<CalendarDay>> kinds = new HashMap<>();
        days.forEach(d -> kinds.computeIfAbsent(d.kind(), k -> new ArrayList<>()).add(d));
        Set<String> left = new HashSet<>();
        for (List<CalendarDay> kind : kinds.values()) {
            kind.sort(
                    Comparator.comparing(CalendarDay::cancelled)
                            .thenComparing(d -> Math.abs(ChronoUnit.DAYS.between(today, d.day())))
                            .thenComparing(CalendarDay::name));
            kind.stream().skip(most).map(CalendarDay::name).forEach(left::add);
        }
        return days.stream().filter(d -> !left.contains(d.name())).toList();
    }
}
