package paperbark.output.paper;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.output.CaseFile;
import paperbark.output.PaperKind;

/**
 * The papers of one job as one PDF.
 *
 * @param caseFile the job
 * @param pdf the document; not to be changed
 * @param papers where each paper lies, in order
 * @param findings what went wrong while the papers were made
 */
public record Pack(CaseFile caseFile, byte[] pdf, List<PaperPages> papers, List<Finding> findings) {
    /** Keeps the lists from being changed. */
    public Pack {
        papers = List.copyOf(papers);
        findings = List.copyOf(findings);
    }

    /** The job's reference. */
    public String jobReference() {
        return caseFile.job().reference();
    }

    /**
     * The case after the pack was made: with what went wrong, and the papers that are held for it.
     */
    public CaseFile packedCase() {
        Map<PaperKind, List<Finding>> held =
                papers.stream()
                        .filter(p -> !p.heldBy().isEmpty())
                        .collect(Collectors.toMap(PaperPages::kind, PaperPages::heldBy));
        return caseFile.packed(findings, held);
    }

    /** How many pages it has, with the blank backs between the papers. */
    public int pageCount() {
        return papers.stream().mapToInt(PaperPages::lastPage).max().orElse(0);
    }
}
