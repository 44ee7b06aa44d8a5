package paperbark.ledger;

import java.util.Optional;
import java.util.Set;
import paperbark.job.JobFact;

/**
 * A claim of a job that the buyer has, paid or not.
 *
 * @param claim the claim
 * @param changed the facts that changed since its papers went out; empty where it cannot be told
 */
public record UnderWay(ClaimState claim, Optional<Set<JobFact>> changed) {}
