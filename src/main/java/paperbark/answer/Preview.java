package paperbark.answer;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.Place;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.form.Forms;
import paperbark.output.paper.Excerpt;
import paperbark.output.paper.Pack;
import paperbark.output.paper.Packs;

/**
 * One paper of one job, made again and again while somebody works on its template: the job is read
 * once, templates and forms anew each time.
 */
public final class Preview {
    private final CaseFile caseFile;
    private final Paper paper;
    private final Optional<Path> templates;

    Preview(CaseFile caseFile, Paper paper, Optional<Path> templates) {
        this.paper = paper;
        this.caseFile = papers(caseFile, paper);
        this.templates = templates;
    }

    /**
     * The paper as it would go out.
     *
     * @param pdf its pages
     * @param pages how many
     * @param isHeld whether a page of reasons lies in the place of the paper
     * @param findings what went wrong while it was made, each once
     */
    public record Rendered(byte[] pdf, int pages, boolean isHeld, List<Finding> findings) {
        /** Keeps the findings from being changed. */
        public Rendered {
            findings = List.copyOf(findings);
        }
    }

    /** Which paper of which job, e.g. {@code stc/kestrel for SB-1101}. */
    public String name() {
        return paper.kind().folder() + "/" + paper.variant() + " for " + caseFile.job().reference();
    }

    /** Makes the paper from the templates as they are now. */
    public Rendered render() {
        Forms.Filled filled = new Forms(templates).fill(caseFile);
        Packs packs = new Packs(templates);
        Pack pack = packs.make(filled.caseFile(), filled.papers());
        int at =
                filled.caseFile().papers().stream().map(Paper::kind).toList().indexOf(paper.kind());
        List<Finding> findings = new ArrayList<>(filled.caseFile().findings());
        findings.removeAll(caseFile.findings());
        findings.addAll(packs.findings());
        findings.addAll(pack.findings());
        return new Rendered(
                Excerpt.of(pack, at),
                pack.papers().get(at).pageCount(),
                pack.packedCase().papers().get(at).isBlocked(),
                findings.stream().filter(this::concernsThePaper).distinct().toList());
    }

    /** The cover lists the other papers of its pack; any other paper is made alone. */
    private static CaseFile papers(CaseFile caseFile, Paper paper) {
        if (paper.kind() != PaperKind.COVER) {
            return caseFile.withPapers(List.of(paper));
        }
        List<Paper> all = new ArrayList<>(caseFile.papers());
        all.replaceAll(p -> p.kind() == paper.kind() ? paper : p);
        all.sort(Comparator.comparing(Paper::kind));
        return caseFile.withPapers(all);
    }

    /** Mistakes in templates of other papers are told when those are looked at. */
    private boolean concernsThePaper(Finding finding) {
        return !(finding.place() instanceof Place.InTemplate template)
                || PaperKind.values().stream()
                        .filter(kind -> kind != paper.kind())
                        .noneMatch(kind -> template.file().startsWith(kind.folder() + "/"));
    }
}
