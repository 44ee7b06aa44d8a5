package paperbark.output.paper;

import com.openhtmltopdf.css.constants.CSSName;
import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.layout.Styleable;
import com.openhtmltopdf.newtable.TableBox;
import com.openhtmltopdf.newtable.TableCellBox;
import com.openhtmltopdf.render.AnonymousBlockBox;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineBox;
import java.util.Arrays;
import java.util.List;

/**
 * A block of a paper that is laid out, which holds lines of words.
 *
 * @param box itself
 * @param firstRun its first run of words among those of the paper
 * @param repeated whether it is in head or foot of a table
 * @param lines what it holds
 */
record LineBlock(BlockBox box, int firstRun, boolean repeated, Lines lines) {

    /**
     * Lines of words.
     *
     * @param key their places and styles
     * @param runs the words
     */
    record Lines(Key key, List<PaperShape.Run> runs) {}

    /** Everything of lines but the words, as numbers and as names. */
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
     * Whether other words that make lines of the same height move nothing else: they do where they
     * bear on the width of a table or box, and it cannot be told where a line holds more than
     * words.
     */
    boolean isFree() {
        return !repeated
                && !(box instanceof AnonymousBlockBox block && hasOpen(block))
                && box.getFirstLineStyle() == null
                && box.getFirstLetterStyle() == null
                && box.getInlineContent().stream().allMatch(LineBlock::isWords)
                && isWide(box);
    }

    private static boolean hasOpen(AnonymousBlockBox block) {
        return block.getOpenInlineBoxes() != null && !block.getOpenInlineBoxes().isEmpty();
    }

    private static boolean isWords(Styleable content) {
        return content instanceof InlineBox inline
                && !inline.isDynamicFunction()
                && !inline.hasFootnote();
    }

    private static boolean isWide(Box box) {
        for (Box around = box; around != null; around = around.getParent()) {
            CalculatedStyle style = around.getStyle();
            if (style.isLength(CSSName.WIDTH) && !(around instanceof TableCellBox)) {
                return true;
            }
            boolean fits =
                    around instanceof TableBox
                            && (style.isAutoWidth()
                                    || style.isIdent(CSSName.TABLE_LAYOUT, IdentValue.AUTO));
            if (fits
                    || style.isInlineBlock()
                    || style.isInlineTable()
                    || style.isPostionedOrFloated()) {
                return false;
            }
        }
        return true;
    }
}
