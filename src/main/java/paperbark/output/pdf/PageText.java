package paperbark.output.pdf;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.function.BiPredicate;

/**
 * Writes the steps of a page as short as they can be said: marks around nothing are left out, those
 * that say the same become one, rectangles of one colour are filled together, and what is set
 * already is not set again.
 */
final class PageText {
    private final Buffer out = new Buffer();
    private final List<Op> ops;
    private final BiPredicate<Integer, Integer> follows;
    private final int[] numbers;
    private int nextNumber;

    // The state of the page as written so far.
    private final Deque<State> kept = new ArrayDeque<>();
    private State state = new State("", -1, 0, List.of());
    private boolean inText;
    private final TextPlace place = new TextPlace(out);

    // Rectangles that are still to be filled.
    private final List<Op.Area> boxes = new ArrayList<>();
    private String boxColour = "";

    // Shapes that are still to be filled; never at the same time as rectangles.
    private final List<Op.Shape> shapes = new ArrayList<>();

    // The parts that are open, the innermost last, and the one that ended but is not closed yet.
    private final List<Part> parts = new ArrayList<>();
    private Part lingering;

    /** What the graphics state holds; lines are settings that nothing needed yet. */
    private record State(String colour, int face, long size, List<byte[]> lines) {}

    private static final class Part {
        private final Mark mark;
        private final boolean allText;
        private boolean open;
        // Whether it begins and ends within a text object, as the standard wants it one way or
        // other.
        private boolean inside;

        private Part(Mark mark, boolean allText) {
            this.mark = mark;
            this.allText = allText;
        }
    }

    /**
     * A writer.
     *
     * @param follows whether the second content of the page comes right behind the first in the
     *     same element of the tree
     * @param contents how many contents the page has
     */
    PageText(List<Op> ops, BiPredicate<Integer, Integer> follows, int contents) {
        this.ops = ops;
        this.follows = follows;
        numbers = new int[contents];
        Arrays.fill(numbers, -1);
    }

    /** The content of the page. */
    byte[] write() {
        for (int i = 0; i < ops.size(); i++) {
            Op op = ops.get(i);
            if (op instanceof Op.Begin begin) {
                parts.add(new Part(begin.mark(), isAllText(i)));
            } else if (op instanceof Op.End) {
                end(parts.remove(parts.size() - 1));
            } else {
                step(op);
            }
        }
        settle();
        return out.toByteArray();
    }

    /** The new number of each content of the page; -1 where it is empty or part of another. */
    int[] numbers() {
        return numbers.clone();
    }

    private boolean isAllText(int begin) {
        int depth = 0;
        for (int i = begin; i < ops.size(); i++) {
            Op op = ops.get(i);
            depth += op instanceof Op.Begin ? 1 : op instanceof Op.End ? -1 : 0;
            if (depth == 0) {
                return true;
            }
            if (!(op instanceof Op.Text || op instanceof Op.Begin)) {
                return false;
            }
        }
        return false;
    }

    private void end(Part part) {
        if (!part.open) {
            return;
        }
        if (parts.isEmpty()) {
            lingering = part;
        } else {
            close(part);
        }
    }

    private void close(Part part) {
        fill();
        if (inText && !part.inside) {
            endText();
        }
        out.text("EMC\n");
        part.open = false;
    }

    private void closeLingering() {
        if (lingering != null) {
            Part part = lingering;
            lingering = null;
            close(part);
        }
    }

    /** Closes everything that is only waiting. */
    private void settle() {
        fill();
        closeLingering();
        endText();
    }

    private void endText() {
        if (inText) {
            out.text("ET\n");
            inText = false;
        }
    }

    private void openParts() {
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            if (part.open) {
                continue;
            }
            if (i == 0 && lingering != null && isSame(lingering, part)) {
                part.open = true;
                part.inside = lingering.inside;
                lingering = null;
                continue;
            }
            closeLingering();
            open(part);
        }
        if (parts.isEmpty()) {
            closeLingering();
        }
    }

    private boolean isSame(Part before, Part part) {
        if (before.inside && !part.allText) {
            return false;
        }
        return part.mark.isContent()
                ? before.mark.isContent()
                        && follows.test(before.mark.content(), part.mark.content())
                : before.mark.equals(part.mark);
    }

    private void open(Part part) {
        fill();
        if (part.allText) {
            beginText();
        } else {
            endText();
        }
        out.text(part.mark.text());
        if (part.mark.isContent()) {
            numbers[part.mark.content()] = nextNumber;
            out.text("<</MCID ").number(nextNumber++).text(">>BDC\n");
        }
        part.open = true;
        part.inside = part.allText;
    }

    private void beginText() {
        if (!inText) {
            out.text("BT\n");
            inText = true;
            place.begin();
        }
    }

    private void step(Op op) {
        if (op instanceof Op.Save) {
            settle();
            out.text("q\n");
            kept.push(state);
        } else if (op instanceof Op.Restore) {
            settle();
            out.text("Q\n");
            state = kept.pop();
        } else if (op instanceof Op.Box box) {
            openParts();
            endText();
            if (!box.colour().equals(boxColour) || !shapes.isEmpty()) {
                fill();
                boxColour = box.colour();
            }
            boxes.add(box.area());
        } else if (op instanceof Op.Shape shape) {
            openParts();
            endText();
            if (shapes.isEmpty() || !shapes.get(0).colour().equals(shape.colour())) {
                fill();
            }
            shapes.add(shape);
        } else if (op instanceof Op.Text text) {
            openParts();
            fill();
            text(text);
        } else {
            other((Op.Other) op);
        }
    }

    private void other(Op.Other op) {
        if (op.kind() == Op.Kind.LINES) {
            List<byte[]> lines = new ArrayList<>(state.lines());
            lines.add(op.text());
            state = new State(state.colour(), state.face(), state.size(), lines);
            return;
        }
        openParts();
        fill();
        endText();
        colour(op.colour());
        if (op.kind() == Op.Kind.DRAWS) {
            state.lines().forEach(this::line);
            state = new State(state.colour(), state.face(), state.size(), List.of());
        }
        line(op.text());
    }

    private void line(byte[] text) {
        out.write(text, 0, text.length);
        if (out.last() != '\n') {
            out.write('\n');
        }
    }

    private void colour(String colour) {
        if (!colour.equals(state.colour())) {
            out.text(colour);
            state = new State(colour, state.face(), state.size(), state.lines());
        }
    }

    private void fill() {
        if (!shapes.isEmpty()) {
            colour(shapes.get(0).colour());
            Shapes.fill(shapes, out);
            shapes.clear();
        }
        if (!boxes.isEmpty()) {
            colour(boxColour);
            Boxes.fill(boxes, out);
            boxes.clear();
        }
    }

    private void text(Op.Text text) {
        beginText();
        colour(text.colour());
        if (text.face() != state.face() || text.size() != state.size()) {
            place.font(text);
            state = new State(state.colour(), text.face(), text.size(), state.lines());
        }
        place.move(text);
        out.write(text.shown(), 0, text.shown().length);
    }
}
