package paperbark.ledger;

import java.time.LocalDate;

/**
 * A paper that went out for a job whose place another one takes.
 *
 * @param job number of the job that it was printed for
 * @param kind name of the paper's kind
 * @param batch name of the batch
 * @param day day of that batch
 */
public record Replaced(String job, String kind, String batch, LocalDate day) {}
