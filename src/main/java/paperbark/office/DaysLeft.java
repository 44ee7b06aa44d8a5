package paperbark.office;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * How far off a day is, in words.
 *
 * @param today the day that it is counted from
 */
record DaysLeft(LocalDate today) {

    /** Such as {@code today}, {@code 3 days left} or {@code 1 day ago}. */
    String until(LocalDate day) {
        long days = ChronoUnit.DAYS.between(today, day);
        if (days == 0) {
            return "today";
        }
        return days < 0 ? count(-days) + " ago" : count(days) + " left";
    }

    /** So many days in words. */
    static String count(long days) {
        return days == 1 ? "1 day" : days + " days";
    }
}
