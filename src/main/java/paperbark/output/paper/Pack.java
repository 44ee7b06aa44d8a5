package paperbark.output.paper;

import java.nio.file.Path;
import java.util.ArrayList;
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
 * @param boxes the boxes on its pages that people write in
 * @param fills the boxes on them that ask for a fact of the register
 * @param claims which standards it says that it keeps
 * @param findings what went wrong while the papers were made
 */
public record Pack(
        CaseFile caseFile,
        byte[] pdf,
        List<PaperPages> papers,
        List<SignBox> boxes,
        List<FillBox> fills,
        Conformance claims,
        List<Finding> findings) {
    /** Keeps the lists from being changed. */
    public Pack {
        papers = List.copyOf(papers);
        boxes = List.copyOf(boxes);
        fills = List.copyOf(fills);
        findings = List.copyOf(findings);
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

    /** The same with what was noticed before it was bound, all of it in order. */
    Pack noting(List<Finding> before) {
        List<Finding> all = new ArrayList<>(before);
        all.addAll(findings);
        return new Pack(caseFile, pdf, papers, boxes, fills, claims, Finding.inOrder(all));
    }

    /** The same pack once its document lies in a file. */
    public FiledPack filed(Path file) {
        return new FiledPack(packedCase(), file, papers, boxes);
    }
}
