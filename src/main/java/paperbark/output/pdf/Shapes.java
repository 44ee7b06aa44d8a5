package paperbark.output.pdf;

import java.util.List;

/**
 * Filled shapes that are no rectangles, such as the mitred frame of a tick box. They are drawn from
 * the first corner of the first one on, so that the next frame of that size is said in the same
 * words.
 */
final class Shapes {
    private Shapes() {}

    /** Fills shapes of one colour. */
    static void fill(List<Op.Shape> shapes, Buffer out) {
        long left = shapes.get(0).lengths().get(0);
        long bottom = shapes.get(0).lengths().get(1);
        out.text("q\n" + Unit.SCALE + " 0 0 " + Unit.SCALE + " ");
        out.length(left).write(' ');
        out.length(bottom).text(" cm\n");
        shapes.forEach(shape -> fill(shape, left, bottom, out));
        out.text("Q\n");
    }

    private static void fill(Op.Shape shape, long left, long bottom, Buffer out) {
        int at = 0;
        for (char step : shape.steps().toCharArray()) {
            for (int i = 0; i < Op.Shape.numbers(step); i += 2) {
                out.layout(shape.lengths().get(at++) - left).write(' ');
                out.layout(shape.lengths().get(at++) - bottom).write(' ');
            }
            out.write(step);
            out.write('\n');
        }
        out.text("f\n");
    }
}
