package paperbark.ledger;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import paperbark.job.JobFact;

/**
 * A paper that went out for a job, and was not withdrawn with it.
 *
 * @param kind name of the paper's kind
 * @param batch name of the batch
 * @param day day of that batch
 * @param pack path of the pack in the batch folder
 * @param says what stood on it beside the job's facts, a line each
 * @param changed the facts of the job that changed since; empty where it cannot be told
 * @param blank facts for which the paper had an empty box, and of which no later list said anything
 *     but what the job says now
 * @param step how far it has come; empty where no papers are scanned
 */
public record PrintedPaper(
        String kind,
        String batch,
        LocalDate day,
        String pack,
        String says,
        Optional<Set<JobFact>> changed,
        Set<JobFact> blank,
        Optional<PaperState.Step> step) {

    /** Keeps the sets from being changed. */
    public PrintedPaper {
        changed = changed.map(Set::copyOf);
        blank = Set.copyOf(blank);
    }
}
