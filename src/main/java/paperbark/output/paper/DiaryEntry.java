package paperbark.output.paper;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One line of the maintenance diary.
 *
 * @param after time since installation in words, e.g. {@code 6 months} or {@code 2 years}
 * @param due the day; empty while the heater is not installed
 * @param tasks what is due
 */
public record DiaryEntry(String after, Optional<LocalDate> due, List<DiaryTask> tasks) {
    /** Keeps the tasks from being changed. */
    public DiaryEntry {
        tasks = List.copyOf(tasks);
    }
}
