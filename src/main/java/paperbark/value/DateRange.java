package paperbark.value;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Days from the first to the last, both included.
 *
 * @param from the first day; empty is open
 * @param to the last day; empty is open
 */
public record DateRange(Optional<LocalDate> from, Optional<LocalDate> to) {
    /** All days. */
    public static final DateRange ALWAYS = new DateRange(Optional.empty(), Optional.empty());

    /** Refuses a last day before the first. */
    public DateRange {
        if (from.isPresent() && to.isPresent() && to.get().isBefore(from.get())) {
            throw new IllegalArgumentException(
                    "ends before it begins: " + from.get() + " to " + to.get());
        }
    }

    /** Whether the day lies within. */
    public boolean contains(LocalDate day) {
        return from.map(f -> !day.isBefore(f)).orElse(true)
                && to.map(t -> !day.isAfter(t)).orElse(true);
    }

    /** Whether any day lies within both. */
    public boolean overlaps(DateRange other) {
        boolean endsBefore =
                to.isPresent() && other.from.isPresent() && to.get().isBefore(other.from.get());
        boolean beginsAfter =
                from.isPresent() && other.to.isPresent() && from.get().isAfter(other.to.get());
        return !endsBefore && !beginsAfter;
    }

    /**
     * In words: {@code 1 Feb 2025 to 30 Jun 2025}, {@code from 1 Feb 2025}, {@code to 30 Jun 2025}
     * or {@code any day}.
     */
    @Override
    public String toString() {
        if (from.isPresent() && to.isPresent()) {
            return Days.show(from.get()) + " to " + Days.show(to.get());
        }
        return from.map(f -> "from " + Days.show(f))
                .or(() -> to.map(t -> "to " + Days.show(t)))
                .orElse("any day");
    }
}
