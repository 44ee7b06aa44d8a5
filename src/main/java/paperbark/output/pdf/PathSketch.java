package paperbark.output.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A path as it is drawn: known as rectangles as long as it is made of nothing else. */
final class PathSketch {
    private final List<Op.Area> areas = new ArrayList<>();
    private final long[] xs = new long[8];
    private final long[] ys = new long[8];
    private int corners;
    private boolean boxes = true;
    private String clip = "";
    private int begin = -1;
    private int steps;
    private int sides;
    private long[] xsOfSide = {};
    private long[] ysOfSide = {};

    /**
     * Adds a step.
     *
     * @param numbers what the operator takes, in {@link Unit}s
     * @param at where the step stands in the content
     */
    void add(String operator, long[] numbers, int at) {
        begin = begin < 0 ? at : begin;
        steps++;
        switch (operator) {
            case "m" -> {
                boxes &= corners == 0;
                corners = 0;
                corner(numbers[0], numbers[1]);
            }
            case "l" -> corner(numbers[0], numbers[1]);
            case "h" -> close();
            case "re" ->
                    area(numbers[0], numbers[1], numbers[0] + numbers[2], numbers[1] + numbers[3]);
            case "W", "W*" -> clip = operator + " ";
            default -> boxes = false;
        }
    }

    private void corner(long x, long y) {
        if (corners == xs.length) {
            boxes = false;
            return;
        }
        xs[corners] = x;
        ys[corners++] = y;
    }

    private void close() {
        int n = corners == 5 && xs[4] == xs[0] && ys[4] == ys[0] ? 4 : corners;
        boolean flat = xs[0] == xs[1] && ys[1] == ys[2] && xs[2] == xs[3] && ys[3] == ys[0];
        boolean steep = ys[0] == ys[1] && xs[1] == xs[2] && ys[2] == ys[3] && xs[3] == xs[0];
        if (n == 4 && !flat && !steep && sides++ == 0) {
            xsOfSide = Arrays.copyOf(xs, 4);
            ysOfSide = Arrays.copyOf(ys, 4);
        }
        boxes &= n == 4 && (flat || steep);
        if (boxes) {
            area(xs[0], ys[0], xs[2], ys[2]);
        }
        corners = 0;
    }

    private void area(long x0, long y0, long x1, long y1) {
        areas.add(
                new Op.Area(
                        Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)));
    }

    /** Whether the path is rectangles and nothing else, and does not clip. */
    boolean isBoxes() {
        return boxes && corners == 0 && clip.isEmpty() && !areas.isEmpty();
    }

    /** Whether the path is one shape with four corners and nothing else. */
    boolean isSide() {
        return !boxes && steps == 5 && sides == 1 && clip.isEmpty();
    }

    /** The shape with four corners. */
    Op.Side side(String colour) {
        return new Op.Side(colour, xsOfSide, ysOfSide);
    }

    /** The rectangles. */
    List<Op.Area> boxes() {
        return List.copyOf(areas);
    }

    /** The path with the operator that ends it. */
    byte[] text(byte[] content, String operator) {
        Buffer out = new Buffer();
        if (boxes && corners == 0) {
            areas.forEach(area -> Boxes.write(area, out));
            return out.text(clip).text(operator).text("\n").toByteArray();
        }
        Tokens rest = new Tokens(content, begin, content.length);
        String word;
        do {
            while (rest.isNumber()) {
                out.length(Unit.of(rest.real())).write(' ');
            }
            word = rest.word();
            out.text(word).write('\n');
        } while (!word.equals(operator));
        return out.toByteArray();
    }

    /** Begins anew. */
    void clear() {
        areas.clear();
        corners = 0;
        boxes = true;
        clip = "";
        begin = -1;
        steps = 0;
        sides = 0;
    }
}
