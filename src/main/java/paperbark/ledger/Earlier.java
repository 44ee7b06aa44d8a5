package paperbark.ledger;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import paperbark.job.JobFact;

/**
 * The newest that the ledger has of a job.
 *
 * @param version counts from 1
 * @param batch name of the batch
 * @param batchInWords the same with its office, where several share the ledger
 * @param day day of that batch
 * @param outcome what the batch did with it
 * @param pack path of the pack in the batch folder
 * @param changed the facts that changed since; empty where it cannot be told
 * @param withdrawn that it was booked out since, where it was
 * @param forgotten whether what it told of a person is emptied
 */
public record Earlier(
        int version,
        String batch,
        String batchInWords,
        LocalDate day,
        JobOutcome outcome,
        String pack,
        Optional<Set<JobFact>> changed,
        Optional<Withdrawn> withdrawn,
        boolean forgotten) {}
