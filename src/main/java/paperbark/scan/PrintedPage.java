package paperbark.scan;

import paperbark.batch.PageMap;

/**
 * A page of a pack as it was printed: what a page that comes back turns out to be.
 *
 * @param job the job number
 * @param version which version of the job it was printed for, from 1
 * @param batch name of the batch that printed it
 * @param paper the paper
 * @param packPage the page of the pack, from 1
 */
public record PrintedPage(
        String job, int version, String batch, PageMap.PaperSpan paper, int packPage) {

    /** Which page of the paper it is, from 1. */
    public int page() {
        return packPage - paper.first() + 1;
    }
}
