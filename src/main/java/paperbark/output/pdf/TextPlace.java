package paperbark.output.pdf;

import java.util.Locale;

/**
 * Moves from one string of a text object to the next. The text is drawn in the unit of the layout,
 * in which every place is a whole number, so that the way from line to line and from column to
 * column is said in the same few digits each time.
 */
final class TextPlace {
    private static final double SCALE = 0.0375;
    private static final String STRAIGHT = Unit.SCALE + " 0 0 " + Unit.SCALE + " ";

    private final Buffer out;
    private boolean known;
    private long x;
    private long y;

    TextPlace(Buffer out) {
        this.out = out;
    }

    /** A text object begins. */
    void begin() {
        known = false;
    }

    /** Chooses a style of the typeface in a size. */
    void font(Op.Text text) {
        out.text("/").text(Faces.nameOf(text.face())).text(" ");
        out.layout(text.size()).text(" Tf\n");
    }

    /** Moves to where a string begins. */
    void move(Op.Text text) {
        boolean straight = text.slant().isEmpty();
        if (straight && known && Unit.isWhole(text.x() - x) && Unit.isWhole(text.y() - y)) {
            out.layout(text.x() - x).write(' ');
            out.layout(text.y() - y).text(" Td\n");
        } else {
            out.text(straight ? STRAIGHT : slant(text.slant()));
            out.length(text.x()).write(' ');
            out.length(text.y()).text(" Tm\n");
        }
        known = straight;
        x = text.x();
        y = text.y();
    }

    private static String slant(String numbers) {
        StringBuilder scaled = new StringBuilder();
        for (String number : numbers.split(" ")) {
            scaled.append(String.format(Locale.ROOT, "%.7f ", Double.parseDouble(number) * SCALE));
        }
        return scaled.toString();
    }
}
