package paperbark.ledger;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One version of a job in the ledger.
 *
 * @param number counts from 1
 * @param batch name of the batch
 * @param batchInWords the same with its office, where several share the ledger
 * @param day day of that batch
 * @param pack path of the pack in the batch folder
 * @param installedOn day of the installation; empty while it was only booked
 * @param warrantyUntil last day of the longest warranty given, where known
 * @param forgotten whether what it told of a person is emptied
 */
public record JobVersion(
        int number,
        String batch,
        String batchInWords,
        LocalDate day,
        String pack,
        Optional<LocalDate> installedOn,
        Optional<LocalDate> warrantyUntil,
        boolean forgotten) {}
