package paperbark.batch;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;

/**
 * What came of a run.
 *
 * @param ending how it ended
 * @param published the batch folder, or the marked-up register when only checking
 * @param counts jobs, packs and certificates
 * @param findings everything noticed, in reading order
 */
public record Outcome(
        Ending ending, Optional<Path> published, Counts counts, List<Finding> findings) {

    /** Keeps the findings from being changed. */
    public Outcome {
        findings = List.copyOf(findings);
    }
}
