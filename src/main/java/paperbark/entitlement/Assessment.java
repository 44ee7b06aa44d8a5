package paperbark.entitlement;

import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;

/**
 * What a scheme says of a job.
 *
 * @param entitlement empty where the job claims nothing under the scheme
 * @param findings what was noticed
 */
public record Assessment(Optional<Entitlement> entitlement, List<Finding> findings) {
    /** The job has nothing to do with the scheme. */
    public static final Assessment NONE = new Assessment(Optional.empty(), List.of());

    /** Keeps the findings from being changed. */
    public Assessment {
        findings = List.copyOf(findings);
    }
}
