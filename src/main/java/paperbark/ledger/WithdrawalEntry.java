package paperbark.ledger;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * Jobs that are booked out, as they go into the ledger.
 *
 * @param jobs the jobs; those that the ledger does not know, or has withdrawn, are left out
 * @param register file name of the list that says so; empty text where a person does
 * @param registerSha256 its hash; likewise
 * @param day day of the run
 * @param at moment of the run, for people only
 * @param program version of the program
 */
public record WithdrawalEntry(
        List<Line> jobs,
        String register,
        String registerSha256,
        LocalDate day,
        Instant at,
        String program) {

    /** Keeps the list from being changed. */
    public WithdrawalEntry {
        jobs = List.copyOf(jobs);
    }

    /**
     * One job.
     *
     * @param job its number
     * @param reason why, in a few words
     */
    public record Line(String job, String reason) {}
}
