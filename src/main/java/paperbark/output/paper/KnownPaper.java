package paperbark.output.paper;

import com.openhtmltopdf.layout.Styleable;
import com.openhtmltopdf.render.BlockBox;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.InlineBox;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToIntFunction;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import paperbark.output.pdf.Sketch;

/**
 * A paper that was laid out and drawn, to be shown with other words without a layout wherever each
 * of them takes the lines that the one before took. For one thread at a time.
 */
final class KnownPaper {
    private static final int NOWHERE = -1;

    private final List<String> words;
    private final ReadyPaper drawn;
    private final List<PaperShape.Run> runs;
    private final List<Optional<FitBlock>> blocks = new ArrayList<>();
    private final int[] firstRuns;
    // Which blocks are known to come out the same where they are laid out alone.
    private final Boolean[] sound;
    // For each of the words its block, and its part of it.
    private final int[] blockOf;
    private final int[] partOf;

    private KnownPaper(TagsAndWords wording, PaperShape shape, ReadyPaper drawn) {
        words = wording.words();
        this.drawn = drawn;
        runs = shape.runs();
        firstRuns = shape.blocks().stream().mapToInt(LineBlock::firstRun).toArray();
        sound = new Boolean[firstRuns.length];
        blockOf = new int[words.size()];
        partOf = new int[words.size()];
        Arrays.fill(blockOf, NOWHERE);
    }

    /**
     * Remembers a paper.
     *
     * @param leaf the box around it
     * @param top where its first page begins
     * @param kinds knows which elements are alike
     * @return empty where it cannot be told which of its words stand where
     */
    static Optional<KnownPaper> of(
            TagsAndWords wording,
            PaperShape shape,
            ReadyPaper drawn,
            Box leaf,
            int top,
            ToIntFunction<Element> kinds,
            StylePool styles) {
        KnownPaper paper = new KnownPaper(wording, shape, drawn);
        for (LineBlock block : shape.blocks()) {
            paper.blocks.add(FitBlock.of(block, top, kinds, styles));
        }
        return paper.new Reader(shape).placed(leaf) ? Optional.of(paper) : Optional.empty();
    }

    /** Finds out which words stand where. */
    private final class Reader {
        private final Map<Box, Integer> numbers = new IdentityHashMap<>();
        private int next;

        private Reader(PaperShape shape) {
            for (int i = 0; i < shape.blocks().size(); i++) {
                numbers.put(shape.blocks().get(i).box(), i);
            }
        }

        private boolean placed(Box leaf) {
            return place(leaf) && next == words.size();
        }

        private boolean place(Box box) {
            // Head and foot are drawn on each page anew.
            if (box.getStyle().isRunning()) {
                return true;
            }
            if (box instanceof BlockBox block
                    && block.getChildrenContentType() == BlockBox.ContentType.INLINE) {
                return placeContent(block);
            }
            for (int i = 0; i < box.getChildCount(); i++) {
                if (!place(box.getChild(i))) {
                    return false;
                }
            }
            return true;
        }

        private boolean placeContent(BlockBox block) {
            List<Styleable> content = block.getInlineContent();
            for (int i = 0; i < content.size(); i++) {
                boolean placed =
                        content.get(i) instanceof InlineBox inline
                                ? !isWords(inline) || place(inline, block, i)
                                : place((Box) content.get(i));
                if (!placed) {
                    return false;
                }
            }
            return true;
        }

        private boolean isWords(InlineBox inline) {
            return inline.getPseudoElementOrClass() == null
                    && !inline.isDynamicFunction()
                    && !inline.getText().isBlank();
        }

        private boolean place(InlineBox inline, BlockBox block, int part) {
            if (next == words.size() || !numbers.containsKey(block)) {
                return false;
            }
            String own = TagsAndWords.collapsed(words.get(next));
            boolean same = own.strip().equals(inline.getText().strip());
            if (!isNamed(block)) {
                blockOf[next] = numbers.get(block);
                partOf[next] = part;
            }
            next++;
            return same;
        }

        /** Whether boxes to write in are called by what stands here. */
        private boolean isNamed(BlockBox block) {
            Node node = block.getElement();
            boolean head = false;
            for (; node instanceof Element element; node = node.getParentNode()) {
                head |= List.of("th", "h3").contains(element.getTagName());
                if (head && element.getAttribute("class").contains("signature")) {
                    return true;
                }
            }
            return false;
        }
    }

    /** The paper with other words; empty where one of them takes other lines. */
    Optional<ReadyPaper> with(List<String> others, FittingRoom room) {
        Map<Integer, Map<Integer, String>> changed = new TreeMap<>();
        for (int i = 0; i < words.size(); i++) {
            if (!words.get(i).equals(others.get(i))) {
                int block = blockOf[i];
                if (block == NOWHERE || blocks.get(block).isEmpty()) {
                    return Optional.empty();
                }
                changed.computeIfAbsent(block, b -> new HashMap<>()).put(partOf[i], others.get(i));
            }
        }
        List<PaperShape.Run> shown = new ArrayList<>(runs);
        for (Map.Entry<Integer, Map<Integer, String>> one : changed.entrySet()) {
            int block = one.getKey();
            Optional<List<PaperShape.Run>> own =
                    isSound(block, room)
                            ? blocks.get(block).orElseThrow().with(one.getValue(), room)
                            : Optional.empty();
            if (own.isEmpty()) {
                return Optional.empty();
            }
            for (int i = 0; i < own.get().size(); i++) {
                shown.set(firstRuns[block] + i, own.get().get(i));
            }
        }
        List<Sketch.Words> all =
                shown.stream().map(run -> new Sketch.Words(run.text(), run.x())).toList();
        return Sketch.canShow(all)
                ? Optional.of(
                        new ReadyPaper(
                                drawn.pages(),
                                drawn.sketch().with(all),
                                drawn.boxes(),
                                drawn.fills(),
                                drawn.settled()))
                : Optional.empty();
    }

    private boolean isSound(int block, FittingRoom room) {
        if (sound[block] == null) {
            sound[block] = blocks.get(block).orElseThrow().isSound(room);
        }
        return sound[block];
    }
}
