package paperbark.answer;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import paperbark.batch.Outcome;
import paperbark.finding.Told;
import paperbark.value.SchemeName;

/**
 * The outcome of a run for other programs.
 *
 * @param ending how it ended
 * @param exitCode the process's exit code
 * @param published the batch folder, or the marked-up register when only checking
 * @param jobs jobs read
 * @param cancelled jobs of the register that are cancelled
 * @param leftOut rows of the register that were taken for no job
 * @param packs packs made
 * @param heldJobs jobs with a paper held back
 * @param certificates certificates on papers that go out, by scheme
 * @param findings everything noticed, one cause told once
 */
public record OutcomeLines(
        String ending,
        int exitCode,
        Optional<String> published,
        int jobs,
        int cancelled,
        int leftOut,
        int packs,
        int heldJobs,
        Map<SchemeName, Integer> certificates,
        List<FindingLine> findings) {

    /** Keeps the findings from being changed. */
    public OutcomeLines {
        findings = List.copyOf(findings);
    }

    /** The lines of an outcome. */
    public static OutcomeLines of(Outcome outcome) {
        return new OutcomeLines(
                outcome.ending().name().toLowerCase(Locale.ROOT),
                outcome.ending().exitCode(),
                outcome.published().map(Object::toString),
                outcome.counts().jobs(),
                outcome.counts().cancelled(),
                outcome.counts().leftOut(),
                outcome.counts().packs(),
                outcome.counts().heldJobs(),
                new TreeMap<>(outcome.counts().certificates()),
                Told.of(outcome.findings()).stream().map(FindingLine::of).toList());
    }
}
