package paperbark.output.paper;

import java.util.List;
import paperbark.finding.Finding;
import paperbark.output.PaperKind;

/**
 * Where a paper lies in its pack.
 *
 * @param kind which paper
 * @param firstPage its first page in the pack, from 1
 * @param pageCount how many pages it takes, at least 1, without the blank back after an odd one
 * @param marked whether its pages bear the scan mark; a buyer's own form may not
 * @param heldBy the stops for which a page of reasons lies in the place of the paper
 */
public record PaperPages(
        PaperKind kind, int firstPage, int pageCount, boolean marked, List<Finding> heldBy) {

    /** Keeps the findings from being changed. */
    public PaperPages {
        heldBy = List.copyOf(heldBy);
    }

    /** Its last page in the pack, from 1; a blank back may follow. */
    public int lastPage() {
        return firstPage + pageCount - 1;
    }
}
