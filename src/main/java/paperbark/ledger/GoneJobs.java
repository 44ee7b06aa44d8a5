package paperbark.ledger;

import java.util.List;

/**
 * Jobs that stand in the ledger but no longer in a later version of their list.
 *
 * @param batch the batch that has them newest, in words
 * @param jobs their numbers
 */
public record GoneJobs(String batch, List<String> jobs) {
    /** Keeps the list from being changed. */
    public GoneJobs {
        jobs = List.copyOf(jobs);
    }
}
