package paperbark.ledger;

import java.time.LocalDate;
import java.util.Map;

/**
 * The newest that the ledger has of a job.
 *
 * @param version counts from 1
 * @param batch name of the batch
 * @param day day of that batch
 * @param outcome what the batch did with it
 * @param pack path of the pack in the batch folder
 * @param facts the prints of its facts then
 * @param forgotten whether what it told of a person is emptied
 */
public record Earlier(
        int version,
        String batch,
        LocalDate day,
        JobOutcome outcome,
        String pack,
        Map<String, String> facts,
        boolean forgotten) {}
