package paperbark.job;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;

/**
 * When the crew goes.
 *
 * @param on the day
 * @param crew the crew's name
 * @param order place in the crew's route, from 1
 * @param note what the office wants the crew to know
 */
public record Visit(
        Optional<LocalDate> on,
        Optional<String> crew,
        Optional<Integer> order,
        Optional<String> note) {
    /** Crew, then day, then place in the day's route; what is not known comes last. */
    public static final Comparator<Visit> ROUTE =
            Comparator.comparing((Visit v) -> v.crew().orElse("\uffff"))
                    .thenComparing(v -> v.on().orElse(LocalDate.MAX))
                    .thenComparing(v -> v.order().orElse(Integer.MAX_VALUE));
}
