package paperbark.scan;

import java.util.List;

/**
 * Finds how a printed page lies in a scan that has no mark: coarse first, over all turns and places
 * that a scanner leaves, then finer and finer about the best of them.
 */
final class Align {
    private static final double MIDDLE_X = 1050;
    private static final double MIDDLE_Y = 1485;
    private static final double TENTHS_HIGH = 2970;

    // What feeders and copiers do: up to six degrees, eight millimetres, shrunk to fit the page.
    private static final double MOST_DEGREES = 6;
    private static final double DEGREES = 0.75;
    private static final int MOST_TENTHS = 80;
    private static final int TENTHS = 20;
    private static final double[] SCALES = {1, 0.97};
    private static final int ROUNDS = 12;

    private final List<Darkness> scan;
    private final double scale;
    private final boolean lies;

    /** For a scan, from coarse to fine. */
    private Align(List<Darkness> scan) {
        this.scan = scan;
        Darkness finest = scan.get(scan.size() - 1);
        this.lies = finest.width() > finest.height();
        this.scale = Math.max(finest.width(), finest.height()) / TENTHS_HIGH;
    }

    /** How a page lies, by what is put onto its middle. */
    private record Fit(double degrees, double scale, double dx, double dy, double likeness) {}

    /**
     * The likeliest pose of a printed page in a scan.
     *
     * @param scan the scan and its halves, the coarsest first, as many as the drawing has levels
     */
    static Pose of(List<Darkness> scan, Drawing drawing) {
        Align align = new Align(scan);
        Fit best = align.coarse(drawing);
        for (int level = 1; level < scan.size() - 1; level++) {
            best = align.climb(best, level, drawing.levels().get(level));
        }
        return align.pose(best);
    }

    private Fit coarse(Drawing drawing) {
        Darkness drawn = drawing.levels().get(0);
        Fit best = new Fit(0, 1, 0, 0, -1);
        for (int base = lies ? 90 : 0; base < 360; base += 180) {
            for (double turn = -MOST_DEGREES; turn <= MOST_DEGREES; turn += DEGREES) {
                for (double by : SCALES) {
                    for (int dx = -MOST_TENTHS; dx <= MOST_TENTHS; dx += TENTHS) {
                        for (int dy = -MOST_TENTHS; dy <= MOST_TENTHS; dy += TENTHS) {
                            best = better(best, new Fit(base + turn, by, dx, dy, 0), 0, drawn);
                        }
                    }
                }
            }
        }
        return best;
    }

    /** Steps in each direction as long as that helps, then with half the step. */
    private Fit climb(Fit from, int level, Darkness drawn) {
        Fit best = better(new Fit(0, 1, 0, 0, -1), from, level, drawn);
        double step = 1;
        for (int round = 0; round < ROUNDS; round++) {
            Fit before = best;
            double tenths = step * TENTHS / (1 << level);
            double degrees = step * DEGREES / (1 << level);
            double by = step * 0.012 / (1 << level);
            for (int sign = -1; sign <= 1; sign += 2) {
                Fit at = best;
                best = better(best, moved(at, sign * degrees, 0, 0, 0), level, drawn);
                best = better(best, moved(at, 0, sign * by, 0, 0), level, drawn);
                best = better(best, moved(at, 0, 0, sign * tenths, 0), level, drawn);
                best = better(best, moved(at, 0, 0, 0, sign * tenths), level, drawn);
            }
            step = best == before ? step / 2 : step;
        }
        return best;
    }

    private static Fit moved(Fit fit, double degrees, double by, double dx, double dy) {
        return new Fit(fit.degrees() + degrees, fit.scale() + by, fit.dx() + dx, fit.dy() + dy, 0);
    }

    private Fit better(Fit best, Fit other, int level, Darkness drawn) {
        double likeness = likeness(pose(other), level, drawn);
        return likeness > best.likeness()
                ? new Fit(other.degrees(), other.scale(), other.dx(), other.dy(), likeness)
                : best;
    }

    private Pose pose(Fit fit) {
        Darkness finest = scan.get(scan.size() - 1);
        double radians = Math.toRadians(fit.degrees());
        double ax = scale * fit.scale() * Math.cos(radians);
        double ay = scale * fit.scale() * Math.sin(radians);
        double x = MIDDLE_X + fit.dx();
        double y = MIDDLE_Y + fit.dy();
        return new Pose(
                finest.width() / 2.0 - x * ax + y * ay,
                finest.height() / 2.0 - x * ay - y * ax,
                ax,
                ay);
    }

    /** How alike the darkness of the page and of the scan beneath it goes up and down, -1 to 1. */
    private double likeness(Pose pose, int level, Darkness drawn) {
        int coarser = 1 << scan.size() - 1 - level;
        Darkness picture = scan.get(level);
        double tenths = Drawing.TENTHS * coarser;
        double stepX = pose.alongX() * tenths / coarser;
        double stepY = pose.alongY() * tenths / coarser;
        long n = 0;
        long a = 0;
        long b = 0;
        long aa = 0;
        long bb = 0;
        long ab = 0;
        for (int y = 0; y < drawn.height(); y += 2) {
            double px = pose.x(tenths / 2, (y + 0.5) * tenths) / coarser;
            double py = pose.y(tenths / 2, (y + 0.5) * tenths) / coarser;
            int line = y * drawn.width();
            for (int x = y / 2 % 2; x < drawn.width(); x += 2) {
                int one = drawn.pixels()[line + x] & 0xff;
                int other = picture.at((int) (px + x * stepX), (int) (py + x * stepY));
                n++;
                a += one;
                b += other;
                aa += one * one;
                bb += other * other;
                ab += one * other;
            }
        }
        double spread = (n * (double) aa - a * (double) a) * (n * (double) bb - b * (double) b);
        return spread <= 0 ? 0 : (n * (double) ab - a * (double) b) / Math.sqrt(spread);
    }
}
