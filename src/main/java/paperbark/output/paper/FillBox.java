package paperbark.output.paper;

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
        int packPage, String field, int signs, int left, int top, int width, int height) {}
