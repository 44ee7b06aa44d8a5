package paperbark.output.paper;

import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.layout.Styleable;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.w3c.dom.Element;

/**
 * A block of lines apart from the paper that it was laid out in, as much as is needed to lay it out
 * with other words.
 *
 * @param style of the block
 * @param width of its lines at most
 * @param x its left edge
 * @param y its upper edge from the first page of the paper
 * @param tx from its left edge to its content
 * @param ty from its upper edge to its content
 * @param lineTop from there to its first line
 * @param parts what it holds
 * @param lines as they were laid out
 */
record FitBlock(
        CalculatedStyle style,
        int width,
        int x,
        int y,
        int tx,
        int ty,
        int lineTop,
        List<Part> parts,
        LineBlock.Lines lines) {

    /**
     * Words of one style.
     *
     * @param text without space that is not seen
     * @param kind of the element that they stand in; 0 where that is the block
     * @param starts whether they are the first of the element
     * @param ends whether they are the last
     * @param direction in which they are read
     * @param pseudo the part of the element that the style sheet made; empty for what the markup
     *     has
     */
    record Part(
            String text,
            CalculatedStyle style,
            int kind,
            boolean starts,
            boolean ends,
            byte direction,
            String pseudo) {}

    /**
     * The block of a paper that is laid out.
     *
     * @param top the first page of the paper
     * @param kinds knows which elements are alike
     * @return empty where it cannot be laid out alone
     */
    static Optional<FitBlock> of(
            LineBlock block, int top, ToIntFunction<Element> kinds, StylePool styles) {
        BlockBox box = block.box();
        if (!block.isFree() || box.getChildCount() == 0) {
            return Optional.empty();
        }
        int own = kinds.applyAsInt(elementOf(box));
        if (own == 0) {
            return Optional.empty();
        }
        List<Part> parts = new ArrayList<>();
        for (Styleable content : box.getInlineContent()) {
            InlineBox inline = (InlineBox) content;
            int kind = inline.getElement() == null ? 0 : kinds.applyAsInt(inline.getElement());
            if (inline.getElement() != null && kind == 0) {
                return Optional.empty();
            }
            String pseudo = Optional.ofNullable(inline.getPseudoElementOrClass()).orElse("");
            StylePool.Role role = kind == 0 ? StylePool.Role.WORDS_OF_BLOCK : StylePool.Role.WORDS;
            parts.add(
                    new Part(
                            inline.getText(),
                            styles.get(kind == 0 ? own : kind, role, pseudo, inline.getStyle()),
                            kind,
                            inline.isStartsHere(),
                            inline.isEndsHere(),
                            inline.getTextDirection(),
                            pseudo));
        }
        StylePool.Role role =
                box.isAnonymous() ? StylePool.Role.PART_OF_BLOCK : StylePool.Role.BLOCK;
        return Optional.of(
                new FitBlock(
                        styles.get(own, role, "", box.getStyle()),
                        box.getContentWidth(),
                        box.getAbsX(),
                        box.getAbsY() - top,
                        box.getTx(),
                        box.getTy(),
                        box.getChild(0).getY(),
                        List.copyOf(parts),
                        block.lines()));
    }

    private static Element elementOf(Box box) {
        Box around = box;
        while (around.getElement() == null) {
            around = around.getParent();
        }
        return around.getElement();
    }

    /** Whether the lines come out as they were, where they are laid out alone. */
    boolean isSound(FittingRoom room) {
        return room.lines(this, Map.of())
                .filter(other -> other.key().equals(lines.key()))
                .filter(other -> saysSame(other.runs(), lines.runs()))
                .isPresent();
    }

    private static boolean saysSame(List<PaperShape.Run> some, List<PaperShape.Run> others) {
        boolean same = some.size() == others.size();
        for (int i = 0; same && i < some.size(); i++) {
            PaperShape.Run one = some.get(i);
            PaperShape.Run other = others.get(i);
            same = one.x() == other.x() && one.text().equals(other.text());
        }
        return same;
    }

    /**
     * The runs of words with others in place of some.
     *
     * @return empty where the lines do not come to stand as they did
     */
    Optional<List<PaperShape.Run>> with(Map<Integer, String> words, FittingRoom room) {
        return room.lines(this, words)
                .filter(other -> other.key().equals(lines.key()))
                .filter(other -> other.runs().stream().allMatch(run -> run.x() >= 0))
                .map(LineBlock.Lines::runs);
    }
}
