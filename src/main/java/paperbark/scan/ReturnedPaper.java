package paperbark.scan;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import paperbark.batch.PageMap;

/**
 * The pages of one paper that a pile holds.
 *
 * @param job the job number
 * @param version which version of the job it was printed for, from 1
 * @param batch name of the batch that printed it
 * @param paper the paper
 * @param pages its pages by their number, in the order of the pile where one is there twice
 */
public record ReturnedPaper(
        String job, int version, String batch, PageMap.PaperSpan paper, List<SeenPage> pages) {

    /** Puts the pages in order. */
    public ReturnedPaper {
        pages =
                pages.stream()
                        .sorted(
                                Comparator.comparing(
                                        (SeenPage p) -> p.place().orElseThrow().page()))
                        .toList();
    }

    /** The numbers of its pages that are here. */
    public Set<Integer> here() {
        Set<Integer> here = new TreeSet<>();
        pages.forEach(page -> here.add(page.place().orElseThrow().page()));
        return here;
    }

    /** The name of its kind in the ledger; an owner's copy is no assignment. */
    public String kind() {
        return paper.kind() + (paper.copy() ? "-copy" : "");
    }
}
