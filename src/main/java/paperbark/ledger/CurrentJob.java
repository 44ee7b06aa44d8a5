package paperbark.ledger;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A job as its newest version stands.
 *
 * @param reference the firm's job number
 * @param outcome what the batch did with it
 * @param installedOn day of the installation; empty while it is only booked
 * @param batch name of the batch
 * @param day day of that batch
 * @param withdrawn whether it was booked out since
 */
public record CurrentJob(
        String reference,
        JobOutcome outcome,
        Optional<LocalDate> installedOn,
        String batch,
        LocalDate day,
        boolean withdrawn) {}
