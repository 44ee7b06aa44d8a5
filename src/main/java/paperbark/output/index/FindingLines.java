package paperbark.output.index;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.RuleRef;
import paperbark.finding.Severity;
import paperbark.finding.Told;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.output.index.IndexView.FindingLine;
import paperbark.output.index.IndexView.SeverityCount;

/** The findings of a batch in the words of its index page, each where people look for it. */
final class FindingLines {
    private static final List<Severity> GRAVEST_FIRST =
            List.of(Severity.STOP, Severity.CHECK, Severity.NOTE);

    private final List<CaseFile> cases;
    private final HiddenValues secrets;
    private final List<Told> told;
    private final Set<Finding> folded;

    /** The findings of the batch without the values that stay off the page. */
    FindingLines(BatchView view, HiddenValues secrets) {
        this.cases = view.cases();
        this.secrets = secrets;
        this.told = Told.of(view.findings());
        this.folded =
                told.stream()
                        .filter(t -> t.isFolded() && t.first().severity() == Severity.NOTE)
                        .flatMap(t -> t.all().stream())
                        .collect(Collectors.toSet());
    }

    /** How many there are of each severity, the gravest first. */
    static List<SeverityCount> counts(List<Finding> findings) {
        return GRAVEST_FIRST.stream().map(s -> count(s, findings)).toList();
    }

    private static SeverityCount count(Severity severity, List<Finding> findings) {
        return new SeverityCount(
                severity.word(), findings.stream().filter(f -> f.severity() == severity).count());
    }

    /** What belongs to no job, or shows in several: one cause is told once. */
    List<FindingLine> general() {
        Set<Finding> ofJobs =
                cases.stream()
                        .flatMap(file -> file.findings().stream())
                        .collect(Collectors.toCollection(HashSet::new));
        return told.stream()
                .filter(t -> t.isFolded() || !ofJobs.contains(t.first()))
                .map(this::finding)
                .toList();
    }

    /** What a job has to read of its own; a stop or check of several jobs stands with each. */
    List<FindingLine> own(CaseFile file) {
        return file.findings().stream()
                .filter(f -> !folded.contains(f))
                .map(f -> finding(new Told(List.of(f))))
                .toList();
    }

    private FindingLine finding(Told told) {
        Finding finding = told.first();
        return new FindingLine(
                finding.severity().word(),
                finding.code().code(),
                told.where(),
                secrets.seen(finding),
                told.isFolded() ? String.join(", ", told.jobs()) : "",
                secrets.cleaned(finding, told.fact()),
                secrets.remedy(finding),
                finding.why(),
                finding.rule().map(RuleRef::inWords).orElse(""));
    }

    /** Why papers of a job are held. */
    List<String> stops(CaseFile file) {
        return file.papers().stream()
                .flatMap(p -> p.blockedBy().stream())
                .distinct()
                .map(this::said)
                .toList();
    }

    /** What is wrong, with the cell's heading and value where the sentence does not have them. */
    private String said(Finding finding) {
        String fact = secrets.cleaned(finding, finding.fact());
        String heading = finding.place().columnHeading();
        String seen = secrets.seen(finding);
        List<String> cell = new ArrayList<>();
        if (!heading.isEmpty() && !fact.contains(heading)) {
            cell.add(heading);
        }
        // What stays off the page needs no words of its own here.
        if (seen.equals(finding.seen()) && !seen.isEmpty() && !fact.contains(seen)) {
            cell.add('"' + seen + '"');
        }
        return cell.isEmpty() ? fact : String.join(", ", cell) + ": " + fact;
    }
}
