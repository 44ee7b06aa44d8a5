package paperbark.output.pdf;

import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;

/**
 * The border of a box, which the layout draws as four sides with slanted ends. As four rectangles,
 * which lie on one another at the corners, it is half as long.
 */
record Frame(Op.Area outer, Op.Area inner) {
    /** How many sides it takes. */
    static final int SIDES = 4;

    /** The frame that four sides make together, if they do. */
    static Optional<Frame> of(List<Op.Side> sides) {
        Op.Area outer = around(sides.stream().flatMapToLong(s -> LongStream.of(s.xs())), sides);
        long[] xs = inside(sides, outer, true);
        long[] ys = inside(sides, outer, false);
        if (xs.length != 2 || ys.length != 2) {
            return Optional.empty();
        }
        Op.Area inner = new Op.Area(xs[0], ys[0], xs[1], ys[1]);
        return sides.stream().allMatch(side -> isOf(side, outer, inner)) && areAllFour(sides, inner)
                ? Optional.of(new Frame(outer, inner))
                : Optional.empty();
    }

    private static Op.Area around(LongStream all, List<Op.Side> sides) {
        var x = all.summaryStatistics();
        var y = sides.stream().flatMapToLong(s -> LongStream.of(s.ys())).summaryStatistics();
        return new Op.Area(x.getMin(), y.getMin(), x.getMax(), y.getMax());
    }

    private static long[] inside(List<Op.Side> sides, Op.Area outer, boolean across) {
        return sides.stream()
                .flatMapToLong(s -> LongStream.of(across ? s.xs() : s.ys()))
                .filter(
                        v ->
                                across
                                        ? v != outer.left() && v != outer.right()
                                        : v != outer.bottom() && v != outer.top())
                .distinct()
                .sorted()
                .toArray();
    }

    /** Whether two corners of the side are neighbouring outer ones, and two those within them. */
    private static boolean isOf(Op.Side side, Op.Area outer, Op.Area inner) {
        int outside = 0;
        int within = 0;
        for (int i = 0; i < SIDES; i++) {
            outside += isCorner(outer, side.xs()[i], side.ys()[i]) ? 1 : 0;
            within += isCorner(inner, side.xs()[i], side.ys()[i]) ? 1 : 0;
        }
        return outside == 2 && within == 2;
    }

    private static boolean isCorner(Op.Area area, long x, long y) {
        return (x == area.left() || x == area.right()) && (y == area.bottom() || y == area.top());
    }

    /** Whether each side lies along another edge. */
    private static boolean areAllFour(List<Op.Side> sides, Op.Area inner) {
        return sides.stream().map(side -> edge(side, inner)).distinct().count() == SIDES;
    }

    private static String edge(Op.Side side, Op.Area inner) {
        boolean below = LongStream.of(side.ys()).allMatch(y -> y <= inner.bottom());
        boolean above = LongStream.of(side.ys()).allMatch(y -> y >= inner.top());
        boolean left = LongStream.of(side.xs()).allMatch(x -> x <= inner.left());
        boolean right = LongStream.of(side.xs()).allMatch(x -> x >= inner.right());
        return below ? "below" : above ? "above" : left ? "left" : right ? "right" : "none";
    }

    /** Fills it, side by side. */
    void fill(Buffer out) {
        Op.Area o = outer;
        Op.Area i = inner;
        Boxes.fill(new Op.Area(o.left(), o.bottom(), o.right(), i.bottom()), out);
        Boxes.fill(new Op.Area(o.left(), i.top(), o.right(), o.top()), out);
        Boxes.fill(new Op.Area(o.left(), o.bottom(), i.left(), o.top()), out);
        Boxes.fill(new Op.Area(i.right(), o.bottom(), o.right(), o.top()), out);
    }
}
