package paperbark.output.paper;

import com.openhtmltopdf.bidi.BidiSplitter;
import com.openhtmltopdf.css.style.CalculatedStyle;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.newtable.TableBox;
import com.openhtmltopdf.newtable.TableCellBox;
import com.openhtmltopdf.newtable.TableRowBox;
import com.openhtmltopdf.newtable.TableSectionBox;
import com.openhtmltopdf.render.AnonymousBlockBox;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineLayoutBox;
import com.openhtmltopdf.render.InlineText;
import com.openhtmltopdf.render.LineBox;
import com.openhtmltopdf.render.MarkerData;
import com.openhtmltopdf.util.OpenUtil;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import org.w3c.dom.Element;

/**
 * Reads the shape of one paper from its boxes. What is no plain text, table, list or block, such as
 * pictures, links, floats and counted page numbers, has no shape: such papers are always drawn.
 */
final class ShapeReader {
    private static final List<Class<?>> KNOWN =
            List.of(
                    BlockBox.class,
                    AnonymousBlockBox.class,
                    TableBox.class,
                    TableSectionBox.class,
                    TableRowBox.class,
                    TableCellBox.class,
                    LineBox.class,
                    InlineLayoutBox.class);
    // Cells can name each other by their ids.
    private static final Set<String> CELLS = Set.of("td", "th");
    private static final int TEXT = -1;
    private static final int MARKER = -2;

    // Of a line or two; a paper has some thousand.
    private static final int FEW = 64;

    private final ToIntFunction<Element> kinds;
    private final CssContext context;
    private final int top;
    private final List<LineBlock> blocks = new ArrayList<>();
    private final List<PaperShape.Run> runs = new ArrayList<>();
    private final Set<String> kept = new HashSet<>();
    private final StringBuilder names = new StringBuilder();
    private int[] numbers = new int[FEW];
    private int count;
    // Whether head or foot of a table is read, which is drawn again on each page of the table.
    private boolean inRepeated;

    /**
     * A reader.
     *
     * @param top where the pages of the paper begin
     * @param kinds knows which elements are alike
     * @param context in which lengths are told
     */
    ShapeReader(int top, ToIntFunction<Element> kinds, CssContext context) {
        this.context = context;
        this.kinds = kinds;
        this.top = top;
    }

    /** The shape; empty where there is something that it could not tell. */
    Optional<PaperShape> read(Box leaf) {
        for (Box around = leaf; around != null; around = around.getParent()) {
            // That is drawn by and by on the pages of all papers.
            if (isSeen(around)) {
                return Optional.empty();
            }
        }
        if (!addBox(leaf)) {
            return Optional.empty();
        }
        return Optional.of(
                new PaperShape(List.copyOf(runs), Set.copyOf(kept), List.copyOf(blocks)));
    }

    /** The lines of one block alone; empty where there is something that cannot be told. */
    Optional<LineBlock.Lines> lines(BlockBox block) {
        return addChildren(block) ? Optional.of(lines(0, 0, 0)) : Optional.empty();
    }

    /** What was read last as the lines of a block, from numbers, names and runs on. */
    private LineBlock.Lines lines(int number, int name, int run) {
        return new LineBlock.Lines(
                new LineBlock.Key(
                        Arrays.copyOfRange(numbers, number, count), names.substring(name)),
                List.copyOf(runs.subList(run, runs.size())));
    }

    /** Whether more is drawn of a box than what it holds. */
    private boolean isSeen(Box box) {
        CalculatedStyle style = box.getStyle();
        return style.isHasBackground() || !style.getBorder(context).isAllZeros();
    }

    private void add(int... more) {
        if (count + more.length > numbers.length) {
            numbers = Arrays.copyOf(numbers, 2 * numbers.length);
        }
        for (int number : more) {
            numbers[count++] = number;
        }
    }

    private boolean addBox(Box box) {
        int kind = KNOWN.indexOf(box.getClass());
        CalculatedStyle style = box.getStyle();
        if (kind < 0
                || box.getLayer() != null
                || style.isPostionedOrFloated()
                || style.isFootnote()
                || style.isFootnoteBody()
                || style.isTextJustify()
                || style.hasLetterSpacing()) {
            return false;
        }
        int like = box.getElement() == null ? 0 : kinds.applyAsInt(box.getElement());
        if (box.getElement() != null && (like == 0 || !addElement(box.getElement()))) {
            return false;
        }
        add(kind, like, box.getAbsY() - top, box.getHeight(), box.getTy(), box.getChildCount());
        names.append(box.getPseudoElementOrClass() == null ? "" : box.getPseudoElementOrClass());
        if (box instanceof LineBox line) {
            return addLine(line);
        }
        if (box instanceof InlineLayoutBox inline) {
            return addInline(inline);
        }
        add(box.getAbsX(), box.getWidth(), box.getContentWidth(), box.getTx());
        if (box instanceof BlockBox block) {
            if (block.isReplaced() || !addMarker(block)) {
                return false;
            }
            if (block.getChildrenContentType() == BlockBox.ContentType.INLINE) {
                return addBlock(block);
            }
        }
        return addChildren(box);
    }

    private boolean addBlock(BlockBox block) {
        int number = count;
        int name = names.length();
        int run = runs.size();
        boolean told = addChildren(block);
        blocks.add(new LineBlock(block, run, inRepeated, lines(number, name, run)));
        return told;
    }

    /** What elements that are alike may still differ in, as far as the tags of the paper say it. */
    private boolean addElement(Element element) {
        if (element.hasAttribute("href")) {
            return false;
        }
        names.append(element.getAttribute("alt")).append('\0');
        names.append(element.getAttribute("title")).append('\0');
        if (element.hasAttribute("id") && CELLS.contains(element.getTagName())) {
            names.append(element.getAttribute("id")).append('\0');
        }
        return true;
    }

    private boolean addChildren(Box box) {
        boolean wasInRepeated = inRepeated;
        inRepeated |=
                box instanceof TableSectionBox section
                        && (section.isHeader() || section.isFooter());
        boolean told = true;
        for (int i = 0; told && i < box.getChildCount(); i++) {
            told = addBox(box.getChild(i));
        }
        inRepeated = wasInRepeated;
        return told;
    }

    private boolean addMarker(BlockBox block) {
        MarkerData marker = block.getMarkerData();
        if (marker == null) {
            return true;
        }
        add(MARKER, marker.getLayoutWidth());
        if (marker.getTextMarker() != null) {
            keep(marker.getTextMarker().getText());
        }
        return marker.getImageMarker() == null;
    }

    private static boolean isDrawn(int letter) {
        return OpenUtil.isCodePointPrintable(letter) && OpenUtil.isSafeFontCodePointToPrint(letter);
    }

    /** Makes a string part of the key. */
    private void keep(String text) {
        names.append(text).append('\0');
        kept.add(text);
    }

    private boolean addLine(LineBox line) {
        add(line.getBaseline(), line.getPaintingTop(), line.getPaintingHeight());
        if (line.getTextDecorations() != null) {
            add(line.getAbsX(), line.getWidth());
        }
        return line.getNonFlowContent().isEmpty() && addChildren(line);
    }

    private boolean addInline(InlineLayoutBox inline) {
        add(inline.getBaseline(), inline.isStartsHere() ? 1 : 0, inline.isEndsHere() ? 1 : 0);
        add(inline.getInlineChildCount());
        if (isSeen(inline) || !inline.getTextDecorations().isEmpty()) {
            add(inline.getAbsX(), inline.getInlineWidth());
        }
        for (Object child : inline.getInlineChildren()) {
            boolean told =
                    child instanceof InlineText text
                            ? addText(text, inline)
                            : child instanceof Box box && addBox(box);
            if (!told) {
                return false;
            }
        }
        return true;
    }

    private boolean addText(InlineText text, InlineLayoutBox inline) {
        if (text.isDynamicFunction()
                || text.isEndsOnSoftHyphen()
                || text.getTextDirection() != BidiSplitter.LTR
                || text.getLetterSpacing() != 0) {
            return false;
        }
        String words = text.getSubstring();
        // The library leaves some letters out when it draws.
        if (!words.codePoints().allMatch(ShapeReader::isDrawn)) {
            return false;
        }
        int x = inline.getAbsX() + text.getX();
        add(TEXT, words.isEmpty() ? 0 : words.isBlank() ? 1 : 2);
        if (inRepeated) {
            add(x);
            keep(words);
        }
        runs.add(new PaperShape.Run(words, x, inline.getAbsY() + inline.getBaseline()));
        return true;
    }
}
