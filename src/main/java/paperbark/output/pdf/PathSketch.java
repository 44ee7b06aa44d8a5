package paperbark.output.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A path as it is drawn: known as rectangles as long as it is made of nothing else. */
final class PathSketch {
    // Where the points that bend a quarter of a circle lie between its ends, on either axis.
    private static final double BEND = 4 * (Math.sqrt(2) - 1) / 3;
    private static final double[] QUARTER = {0, BEND, 1 - BEND, 1};

    // Some thousandths of a point.
    private static final long NEAR = 30;

    private final List<Op.Area> areas = new ArrayList<>();
    private final long[] xs = new long[8];
    private final long[] ys = new long[8];
    private int corners;
    private boolean boxes = true;
    private String clip = "";
    private int begin = -1;

    /**
     * Adds a step.
     *
     * @param numbers what the operator takes, in {@link Unit}s
     * @param at where the step stands in the content
     */
    void add(String operator, long[] numbers, int at) {
        begin = begin < 0 ? at : begin;
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
        long[] numbers = new long[8];
        long x = 0;
        long y = 0;
        String word;
        do {
            int count = 0;
            while (rest.isNumber()) {
                numbers[count++] = Unit.of(rest.real());
            }
            word = rest.word();
            if (word.equals("c")) {
                round(numbers, 0, x);
                round(numbers, 1, y);
            }
            for (int i = 0; i < count; i++) {
                out.length(numbers[i]).write(' ');
            }
            out.text(word).write('\n');
            x = count > 1 ? numbers[count - 2] : x;
            y = count > 1 ? numbers[count - 1] : y;
        } while (!word.equals(operator));
        return out.toByteArray();
    }

    /**
     * The path as a shape.
     *
     * @param operator that ends it
     * @return empty if it does more than be filled
     */
    Optional<Op.Shape> shape(byte[] content, String operator, String colour) {
        if (!operator.equals("f") || !clip.isEmpty()) {
            return Optional.empty();
        }
        StringBuilder steps = new StringBuilder();
        List<Long> lengths = new ArrayList<>();
        Tokens rest = new Tokens(content, begin, content.length);
        long[] numbers = new long[8];
        while (true) {
            int count = 0;
            while (rest.isNumber()) {
                numbers[count++] = Unit.of(rest.real());
            }
            String word = rest.word();
            if (word.equals(operator)) {
                return Optional.of(new Op.Shape(colour, steps.toString(), List.copyOf(lengths)));
            }
            if (word.length() != 1 || Op.Shape.OPERATORS.indexOf(word.charAt(0)) < 0) {
                return Optional.empty();
            }
            if (word.equals("c")) {
                round(numbers, 0, lengths.get(lengths.size() - 2));
                round(numbers, 1, lengths.get(lengths.size() - 1));
            }
            Arrays.stream(numbers, 0, count).forEach(lengths::add);
            steps.append(word);
        }
    }

    /**
     * Works out anew the points that bend a quarter of a circle. The layout rounds them, to other
     * last digits further down the document.
     *
     * @param numbers of the curve (ISO 32000-1, 8.5.2.2)
     * @param axis 0 for what lies across the page, 1 for what lies along it
     * @param from where the curve begins on that axis
     */
    private static void round(long[] numbers, int axis, long from) {
        long length = numbers[4 + axis] - from;
        for (int i = axis; i < 4; i += 2) {
            for (double part : QUARTER) {
                long exact = from + Math.round(part * length);
                if (Math.abs(numbers[i] - exact) <= NEAR) {
                    numbers[i] = exact;
                }
            }
        }
    }

    /** Begins anew. */
    void clear() {
        areas.clear();
        corners = 0;
        boxes = true;
        clip = "";
        begin = -1;
    }
}
