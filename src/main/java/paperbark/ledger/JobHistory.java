package paperbark.ledger;

import java.util.List;
import java.util.Optional;

/**
 * What the ledger knows that concerns a job.
 *
 * @param earlier the job itself, when it was in a batch before
 * @param underWay the job's own claims that were lodged or paid already
 * @param conflicts claims of other jobs
 */
public record JobHistory(
        Optional<Earlier> earlier, List<UnderWay> underWay, List<Conflict> conflicts) {
    /** Nothing known. */
    public static final JobHistory NONE = new JobHistory(Optional.empty(), List.of(), List.of());

    /** Keeps the lists from being changed. */
    public JobHistory {
        underWay = List.copyOf(underWay);
        conflicts = List.copyOf(conflicts);
    }
}
