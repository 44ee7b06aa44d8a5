package paperbark.job;

import java.time.LocalDate;
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
        Optional<String> note) {}
