package paperbark.output.paper;

import java.nio.file.Path;
import java.util.List;
import paperbark.output.CaseFile;

/**
 * A pack that lies in a file, so that no more of it is in memory than what others need to know.
 *
 * @param caseFile the job after its pack was made
 * @param file the document
 * @param papers where each paper lies, in order
 * @param boxes the boxes on its pages that people write in
 */
public record FiledPack(
        CaseFile caseFile, Path file, List<PaperPages> papers, List<SignBox> boxes) {
    /** Keeps the lists from being changed. */
    public FiledPack {
        papers = List.copyOf(papers);
        boxes = List.copyOf(boxes);
    }
}
