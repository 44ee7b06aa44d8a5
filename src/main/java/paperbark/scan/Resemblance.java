package paperbark.scan;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How much a scanned page looks like pages that were printed. The limits are those with which piles
 * that were made for it had no page placed wrong; no source.
 */
final class Resemblance {
    // A cell is found in the scan from here on.
    private static final double FOUND = 0.55;
    // So many cells of the page must be: people write over some.
    private static final double ALL_FOUND = 0.9;
    // And so many of those in which it differs from pages like it.
    private static final double VALUES_FOUND = 0.85;
    private static final int FEWEST_VALUES = 4;
    // By so much those look more like it than like another page, on the whole.
    private static final double MARGIN = 0.15;
    private static final double MOSTLY = 0.8;
    private static final int LEVELS = 4;

    private final List<Darkness> scan = new ArrayList<>();
    private final Drawings drawings;
    private Optional<PrintedPage> likeliest = Optional.empty();
    private double most;
    private double[] cells = {};
    private Pose pose = new Pose(0, 0, 1, 0);
    private Darkness upright = new Darkness(0, 0, new byte[0]);

    Resemblance(Grey picture, Drawings drawings) {
        this.drawings = drawings;
        scan.add(Darkness.of(picture.reduced(PageLook.reduction(picture))));
        while (scan.size() < LEVELS) {
            scan.add(0, scan.get(0).halved());
        }
    }

    /** Holds the scan against one more page. */
    void add(PrintedPage page) throws IOException {
        Optional<Drawing> drawing = drawings.of(page);
        if (drawing.isEmpty()) {
            return;
        }
        Pose at = Align.of(scan, drawing.get());
        Darkness straight = Likeness.upright(scan.get(LEVELS - 1), at);
        double[] found = Likeness.of(scan.get(LEVELS - 1), at, straight, drawing.get());
        double share = share(found);
        if (share > most) {
            most = share;
            likeliest = Optional.of(page);
            cells = found;
            pose = at;
            upright = straight;
        }
    }

    /** The page that it looks like most, if it looks like one on the whole. */
    Optional<PrintedPage> likeliest() {
        return likeliest.filter(page -> most >= ALL_FOUND);
    }

    int quarterTurns() {
        return pose.quarterTurns();
    }

    /**
     * Whether it looks like that page and like none of others, wherever they differ. Without others
     * it cannot be told what of a form is filled in.
     */
    boolean isClear(Set<PrintedPage> others) throws IOException {
        Drawing page = drawings.of(likeliest.orElseThrow()).orElseThrow();
        Map<Integer, Double> values = new HashMap<>();
        for (PrintedPage other : others) {
            Optional<Drawing> rival = drawings.of(other);
            // Of the same job, a page that nobody can draw any more may be just like it.
            boolean beaten =
                    rival.isPresent()
                            ? beats(page, rival.get(), values)
                            : !other.job().equals(likeliest.get().job());
            if (!beaten) {
                return false;
            }
        }
        long found = values.values().stream().filter(v -> v >= FOUND).count();
        return found >= Math.max(FEWEST_VALUES, values.size() * VALUES_FOUND);
    }

    private boolean beats(Drawing page, Drawing rival, Map<Integer, Double> values) {
        int differing = 0;
        int better = 0;
        double margin = 0;
        for (int cell = 0; cell < Likeness.CELLS; cell++) {
            if (!Double.isNaN(cells[cell]) && Likeness.differ(page, rival, cell)) {
                values.put(cell, cells[cell]);
                double against = Likeness.inCell(upright, rival, cell);
                double more = cells[cell] - (Double.isNaN(against) ? 0 : against);
                differing++;
                better += more > 0 ? 1 : 0;
                margin += more;
            }
        }
        return differing >= FEWEST_VALUES
                && better >= differing * MOSTLY
                && margin >= differing * MARGIN;
    }

    private static double share(double[] cells) {
        int all = 0;
        int found = 0;
        for (double cell : cells) {
            if (!Double.isNaN(cell)) {
                all++;
                found += cell >= FOUND ? 1 : 0;
            }
        }
        return all == 0 ? 0 : found / (double) all;
    }
}
