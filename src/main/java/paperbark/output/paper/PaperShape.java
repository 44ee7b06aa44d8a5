package paperbark.output.paper;

import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.output.pdf.PaperPart;
import paperbark.output.pdf.Sketch;

/**
 * What the drawing of a paper follows from, once it is laid out: its boxes with their styles and
 * places, and the words apart from them.
 *
 * @param key all of it but the words; papers with the same key differ in words alone
 * @param runs the words, in the order of the boxes
 * @param kept strings that are part of the key: heads of tables, and what stands before items of
 *     lists
 * @param blocks the blocks that hold lines of words
 */
record PaperShape(Key key, List<Run> runs, Set<String> kept, List<LineBlock> blocks) {

    /**
     * A run of words within a line.
     *
     * @param text its letters
     * @param x its left end
     * @param y its base line
     */
    record Run(String text, int x, int y) {}

    /** Everything but the words, as numbers and as names. */
    static final class Key {
        private final int[] numbers;
        private final String names;
        private final int hash;

        Key(int[] numbers, String names) {
            this.numbers = numbers;
            this.names = names;
            hash = 31 * Arrays.hashCode(numbers) + names.hashCode();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Key key
                    && hash == key.hash
                    && names.equals(key.names)
                    && Arrays.equals(numbers, key.numbers);
        }

        @Override
        public int hashCode() {
            return hash;
        }
    }

    /**
     * The shape of a paper.
     *
     * @param leaf the box around it
     * @param pages on which it stands
     * @param styles knows which elements are alike
     * @param context in which their lengths are told
     * @return empty where its drawing follows from more than that
     */
    static Optional<PaperShape> of(
            Box leaf, List<PageBox> pages, WatchedStyles styles, CssContext context) {
        return new ShapeReader(pages, pages.get(0).getTop(), styles::kindOf, context).read(leaf);
    }

    /** The words as they are put into a sketch. */
    List<Sketch.Words> words() {
        return runs.stream().map(run -> new Sketch.Words(run.text(), run.x())).toList();
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
