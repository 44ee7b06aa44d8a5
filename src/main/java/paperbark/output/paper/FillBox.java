package paperbark.output.paper;

import java.util.List;

/**
 * A box on a printed page that asks for a fact of the register. Lengths in tenths of a millimetre
 * from the top left corner of the page.
 *
 * @param packPage the page of the pack, from 1
 * @param field key of the fact as the template names it; it may be none of the register's
 * @param signs how many cells the box has, one a sign; 1 where it is one cell for any text
 * @param left its left edge
 * @param top its upper edge
 * @param width its width, at least 1
 * @param height its height, at least 1
 */
public record FillBox(
        int packPage, String field, int signs, int left, int top, int width, int height) {

    /** Those on the pages of a paper, with pages counted within it. */
    static List<FillBox> within(List<FillBox> all, Extent paper) {
        return all.stream()
                .filter(box -> paper.has(box.packPage - 1))
                .map(box -> box.moved(-paper.first()))
                .toList();
    }

    /** The same so many pages further on. */
    FillBox moved(int pages) {
        return new FillBox(packPage + pages, field, signs, left, top, width, height);
    }
}
