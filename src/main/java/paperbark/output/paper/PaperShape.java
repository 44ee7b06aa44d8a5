package paperbark.output.paper;

import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.render.Box;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.output.pdf.PaperPart;

/**
 * What the drawing of a paper follows from, once it is laid out, as far as it can be told: its
 * words, and the blocks that hold them.
 *
 * @param runs the words, in the order of the boxes
 * @param kept strings that stay as they are: heads of tables, and what stands before items of lists
 * @param blocks the blocks that hold lines of words
 */
record PaperShape(List<Run> runs, Set<String> kept, List<LineBlock> blocks) {

    /**
     * A run of words within a line.
     *
     * @param text its letters
     * @param x its left end
     * @param y its base line
     */
    record Run(String text, int x, int y) {}

    /**
     * The shape of a paper.
     *
     * @param leaf the box around it
     * @param top where its first page begins
     * @param styles knows which elements are alike
     * @param context in which their lengths are told
     * @return empty where its drawing follows from more than that
     */
    static Optional<PaperShape> of(Box leaf, int top, WatchedStyles styles, CssContext context) {
        return new ShapeReader(top, styles::kindOf, context).read(leaf);
    }

    /** Finds the run that a string on the page is. */
    Finder finder() {
        Map<Run, Integer> placed = new HashMap<>();
        for (int i = 0; i < runs.size(); i++) {
            Run run = runs.get(i);
            placed.merge(run, i, (a, b) -> PaperPart.UNKNOWN);
        }
        return new Finder(placed, kept);
    }

    /**
     * Finds runs by their place; what is kept may stand at other heights and on further pages too.
     */
    record Finder(Map<Run, Integer> placed, Set<String> kept) {
        int find(String text, float x, float y) {
            int other = kept.contains(text) ? PaperPart.KEPT : PaperPart.UNKNOWN;
            return placed.getOrDefault(new Run(text, (int) x, (int) y), other);
        }
    }
}
