package paperbark.output.paper;

import java.util.List;
import paperbark.output.pdf.Sketch;

/**
 * A paper whose pages are known.
 *
 * @param pages how many, at least 1
 * @param sketch what is drawn on them
 * @param boxes those that people write in; pages are counted within the paper, from 1
 * @param fills those that ask for a fact of the register; pages likewise
 * @param settled whether it is known that another paper behind it begins at the top of a page
 */
record ReadyPaper(
        int pages, Sketch sketch, List<SignBox> boxes, List<FillBox> fills, boolean settled) {
    /** Keeps the lists from being changed. */
    ReadyPaper {
        boxes = List.copyOf(boxes);
        fills = List.copyOf(fills);
    }

    /** Whether another is the same in all that can be seen. */
    boolean isSame(ReadyPaper other) {
        return pages == other.pages
                && boxes.equals(other.boxes)
                && fills.equals(other.fills)
                && sketch.isSame(other.sketch);
    }
}
