package paperbark.output.paper;

import java.util.List;

/**
 * A box on a printed page that is to be written in by hand: a signature, a name or a day. Lengths
 * in tenths of a millimetre from the top left corner of the page.
 *
 * @param packPage the page of the pack, from 1
 * @param who who writes in it, e.g. {@code Owner}
 * @param what what is written in it, e.g. {@code Signature}
 * @param left its left edge
 * @param top its upper edge
 * @param width its width, at least 1
 * @param height its height, at least 1
 */
public record SignBox(
        int packPage, String who, String what, int left, int top, int width, int height) {

    /** Those on the pages of a paper, with pages counted within it. */
    static List<SignBox> within(List<SignBox> all, Extent paper) {
        return all.stream()
                .filter(box -> paper.has(box.packPage - 1))
                .map(box -> box.moved(-paper.first()))
                .toList();
    }

    /** The same so many pages further on. */
    SignBox moved(int pages) {
        return new SignBox(packPage + pages, who, what, left, top, width, height);
    }
}
