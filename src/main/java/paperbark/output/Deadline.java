package paperbark.output;

import java.time.LocalDate;

/**
 * A day after which something is too late.
 *
 * @param what in words, e.g. {@code Create STCs}
 * @param lastDay the last safe day
 * @param daysLeft from the day of the run; negative when past
 */
public record Deadline(String what, LocalDate lastDay, long daysLeft) {

    /** Whether the day is over. */
    public boolean isPast() {
        return daysLeft < 0;
    }

    /** How many days ago it was; zero while it is not over. */
    public long daysLate() {
        return Math.max(0, -daysLeft);
    }
}
