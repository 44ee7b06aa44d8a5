package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A formula and the first day for which it speaks. A formula that replaces another is a further
 * entry of the same list; the code of the earlier one stays as it is.
 *
 * @param firstDay the first day
 * @param formula what holds from that day until a later entry begins
 */
record SinceDate<T>(LocalDate firstDay, T formula) {

    /** The formula for a day: that of the newest entry that has begun; empty before all of them. */
    static <T> Optional<T> on(List<SinceDate<T>> eras, LocalDate day) {
        return eras.stream()
                .filter(era -> !day.isBefore(era.firstDay()))
                .max(Comparator.comparing(SinceDate::firstDay))
                .map(SinceDate::formula);
    }
}
