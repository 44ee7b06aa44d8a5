package paperbark.output.form;

import org.apache.pdfbox.util.Matrix;

/** Quarter turns. */
final class Turn {
    private Turn() {}

    /**
     * Turns a box of the given size anticlockwise about its lower left corner and moves it back to
     * that corner.
     *
     * @param degrees 0, 90, 180 or 270; anything else is 0
     */
    static Matrix of(int degrees, float width, float height) {
        return switch (degrees) {
            case 90 -> new Matrix(0, 1, -1, 0, height, 0);
            case 180 -> new Matrix(-1, 0, 0, -1, width, height);
            case 270 -> new Matrix(0, -1, 1, 0, 0, width);
            default -> new Matrix();
        };
    }
}
