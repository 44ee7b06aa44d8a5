package paperbark.batch;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.output.BatchView;

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

    /** Of a register that cannot be used. What the firm's tables cause is not its fault. */
    public static Outcome refused(Request request, List<Finding> findings) {
        String register = request.register().name();
        boolean tables =
                findings.stream().anyMatch(f -> f.stops() && !f.place().file().equals(register));
        return new Outcome(
                tables ? Ending.SETUP : Ending.REFUSED,
                Optional.empty(),
                Counts.NONE,
                Finding.inOrder(findings));
    }

    /** The same with the marked-up register, where there is one, and what was noticed about it. */
    Outcome with(Optional<Path> marked, List<Finding> more) {
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(more);
        return new Outcome(
                ending, marked, counts, more.isEmpty() ? findings : Finding.inOrder(all));
    }

    /** Of a register that was prepared before. */
    static Outcome already(Path published) {
        return new Outcome(Ending.ALREADY, Optional.of(published), Counts.NONE, List.of());
    }

    /** Of a register of which no job is left to be prepared. */
    static Outcome nothingLeft(List<Finding> findings) {
        boolean stopped = findings.stream().anyMatch(Finding::stops);
        return new Outcome(
                stopped ? Ending.REFUSED : Ending.ALREADY, Optional.empty(), Counts.NONE, findings);
    }

    /** Of a batch. A row that yields no job at all, such as one without a number, is held too. */
    static Outcome of(BatchView view, int packs, Optional<Path> published) {
        return of(Counts.of(view.cases()), view.findings(), packs, published);
    }

    /**
     * The same of counted cases.
     *
     * @param cases the counts of cases alone
     */
    static Outcome of(Counts cases, List<Finding> findings, int packs, Optional<Path> published) {
        Counts counts =
                cases.with(BatchView.cancelled(findings), BatchView.leftOut(findings), packs);
        boolean lost = findings.stream().anyMatch(f -> f.stops() && f.job().isEmpty());
        return new Outcome(
                counts.heldJobs() > 0 || lost ? Ending.HELD : Ending.DONE,
                published,
                counts,
                findings);
    }
}
