package paperbark.output.index;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * A chart of lying bars and the table that says the same; what is held stands behind what counts.
 *
 * @param title what it shows
 * @param of heading of what the bars are of, e.g. {@code Day}
 * @param counts heading of the part that counts
 * @param held heading of the part that is held; empty where nothing can be
 * @param bars from top to bottom
 */
public record Chart(String title, String of, String counts, String held, List<Bar> bars) {
    /** Width of the drawing in its own units. */
    static final int WIDTH = 260;

    private static final int ROW = 30;

    /**
     * One bar.
     *
     * @param label what it is of
     * @param counts the part that counts, as shown
     * @param held the part that is held, as shown
     * @param words both as written above the bar
     * @param y where the bar's row begins
     * @param solid length of the part that counts, in the drawing's units
     * @param open length of the part that is held
     */
    public record Bar(
            String label, String counts, String held, String words, int y, int solid, int open) {}

    /**
     * What a bar shows, before it is drawn.
     *
     * @param label what it is of
     * @param counts the part that counts, not negative
     * @param held the part that is held, not negative
     */
    record Part(String label, BigDecimal counts, BigDecimal held) {
        private BigDecimal all() {
            return counts.add(held);
        }
    }

    /** How numbers are shown. */
    interface Shown {
        /** The number as people read it. */
        String of(BigDecimal number);
    }

    /** Keeps the list from being changed. */
    public Chart {
        bars = List.copyOf(bars);
    }

    /** Height of the drawing in its own units. */
    public int height() {
        return bars.size() * ROW;
    }

    /** A chart that has no bars yet. */
    static Chart headed(String title, String of, String counts, String held) {
        return new Chart(title, of, counts, held, List.of());
    }

    /** The same with a bar a part, the longest as wide as the drawing. */
    Chart drawn(List<Part> parts, Shown shown) {
        BigDecimal most = parts.stream().map(Part::all).reduce(BigDecimal.ONE, BigDecimal::max);
        List<Bar> drawn = new ArrayList<>();
        for (Part part : parts) {
            String counting = shown.of(part.counts());
            String holding = shown.of(part.held());
            drawn.add(
                    new Bar(
                            part.label(),
                            counting,
                            holding,
                            words(part, counting, holding),
                            drawn.size() * ROW,
                            length(part.counts(), most),
                            length(part.held(), most)));
        }
        return new Chart(title, of, counts, held, drawn);
    }

    private static String words(Part part, String counts, String held) {
        if (part.held().signum() == 0) {
            return counts;
        }
        return part.counts().signum() == 0 ? held + " held" : counts + " + " + held + " held";
    }

    /** Something is never nothing to the eye, and a fee beyond the money never a bar beyond it. */
    private static int length(BigDecimal part, BigDecimal most) {
        int length =
                part.multiply(BigDecimal.valueOf(WIDTH - 2L))
                        .divide(most, 0, RoundingMode.DOWN)
                        .intValueExact();
        return part.signum() == 0 ? 0 : Math.min(Math.max(length, 1), WIDTH - 2);
    }
}
