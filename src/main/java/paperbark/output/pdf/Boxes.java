package paperbark.output.pdf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Rectangles of one colour that are filled one after another: those that touch along a whole side
 * become one, as the rules of neighbouring cells do. What lies on another is filled in a further
 * turn, since a fine line drawn twice is darker.
 */
final class Boxes {
    private static final Comparator<Op.Area> IN_ROWS =
            Comparator.comparingLong(Op.Area::bottom)
                    .thenComparingLong(Op.Area::top)
                    .thenComparingLong(Op.Area::left)
                    .thenComparingLong(Op.Area::right);
    private static final Comparator<Op.Area> IN_COLUMNS =
            Comparator.comparingLong(Op.Area::left)
                    .thenComparingLong(Op.Area::right)
                    .thenComparingLong(Op.Area::bottom)
                    .thenComparingLong(Op.Area::top);

    // From here on whole numbers save more than setting their unit costs.
    private static final int MANY = 3;

    private Boxes() {}

    /** Fills the rectangles. */
    static void fill(List<Op.Area> areas, Buffer out) {
        List<Op.Area> joined = new ArrayList<>();
        turns(areas).forEach(turn -> joined.addAll(columns(rows(turn))));
        if (joined.size() < MANY || !joined.stream().allMatch(Boxes::isWhole)) {
            joined.forEach(area -> fill(area, out));
            return;
        }
        out.text("q\n" + Unit.SCALE + " 0 0 " + Unit.SCALE + " 0 0 cm\n");
        for (Op.Area area : joined) {
            out.layout(area.left()).write(' ');
            out.layout(area.bottom()).write(' ');
            out.layout(area.right() - area.left()).write(' ');
            out.layout(area.top() - area.bottom()).text(" re\nf\n");
        }
        out.text("Q\n");
    }

    private static boolean isWhole(Op.Area area) {
        return Unit.isWhole(area.left())
                && Unit.isWhole(area.bottom())
                && Unit.isWhole(area.right())
                && Unit.isWhole(area.top());
    }

    /** Fills a rectangle alone: some readers draw one sharper than several together. */
    static void fill(Op.Area area, Buffer out) {
        write(area, out);
        out.text("f\n");
    }

    /** Each rectangle in the first turn that has none of the same row or column over it. */
    private static List<List<Op.Area>> turns(List<Op.Area> areas) {
        List<List<Op.Area>> turns = new ArrayList<>();
        for (Op.Area area : areas) {
            List<Op.Area> free =
                    turns.stream()
                            .filter(turn -> turn.stream().noneMatch(o -> isOver(o, area)))
                            .findFirst()
                            .orElse(null);
            if (free == null) {
                free = new ArrayList<>();
                turns.add(free);
            }
            free.add(area);
        }
        return turns;
    }

    private static boolean isOver(Op.Area one, Op.Area other) {
        return one.left() < other.right()
                && other.left() < one.right()
                && one.bottom() < other.top()
                && other.bottom() < one.top();
    }

    private static List<Op.Area> rows(List<Op.Area> areas) {
        List<Op.Area> sorted = new ArrayList<>(areas);
        sorted.sort(IN_ROWS);
        List<Op.Area> joined = new ArrayList<>();
        Op.Area last = null;
        for (Op.Area next : sorted) {
            if (last != null
                    && last.bottom() == next.bottom()
                    && last.top() == next.top()
                    && last.right() == next.left()) {
                joined.remove(joined.size() - 1);
                last = new Op.Area(last.left(), last.bottom(), next.right(), last.top());
            } else {
                last = next;
            }
            joined.add(last);
        }
        return joined;
    }

    private static List<Op.Area> columns(List<Op.Area> areas) {
        List<Op.Area> sorted = new ArrayList<>(areas);
        sorted.sort(IN_COLUMNS);
        List<Op.Area> joined = new ArrayList<>();
        Op.Area last = null;
        for (Op.Area next : sorted) {
            if (last != null
                    && last.left() == next.left()
                    && last.right() == next.right()
                    && last.top() == next.bottom()) {
                joined.remove(joined.size() - 1);
                last = new Op.Area(last.left(), last.bottom(), last.right(), next.top());
            } else {
                last = next;
            }
            joined.add(last);
        }
        return joined;
    }

    /** Adds a rectangle to a path. */
    static void write(Op.Area area, Buffer out) {
        out.length(area.left()).write(' ');
        out.length(area.bottom()).write(' ');
        out.length(area.right() - area.left()).write(' ');
        out.length(area.top() - area.bottom()).text(" re\n");
    }
}
