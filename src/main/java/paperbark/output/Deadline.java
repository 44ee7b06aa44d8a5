package paperbark.output;

import java.time.LocalDate;

/**
 * A day after which something is too late.
 *
 * @param what in words, e.g. {@code Create STCs}
 * @param lastDay the last safe day
 * @param daysLeft from the day of the run; negative when past
 */
public record Deadline(String what, LocalDate lastDay, long daysLeft) {}
