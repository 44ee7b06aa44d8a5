package paperbark.output.paper;

import java.util.List;
import paperbark.finding.Finding;
import paperbark.output.CaseFile;

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

    /** How many pages it has. */
    public int pageCount() {
        return papers.stream().mapToInt(PaperPages::pageCount).sum();
    }
}
