package paperbark.scan;

/** How well the parts of a printed page are found in a scan: ten by four millimetres each. */
final class Likeness {
    private static final int CELL_WIDTH = 40;
    private static final int CELL_HEIGHT = 16;
    private static final int ACROSS = Drawing.WIDTH / CELL_WIDTH;
    private static final int DOWN = Drawing.HEIGHT / CELL_HEIGHT;
    private static final int SLACK = 3;
    // Below it a cell holds no ink that could be told from noise.
    private static final double INK = 14;
    // Two printed pages say something else in a cell where they are less alike than that.
    private static final double SAME = 0.85;

    private Likeness() {}

    /** How many cells a page has. */
    static final int CELLS = ACROSS * DOWN;

    /** The scan as it would be if it were the printed page: upright, and of the same size. */
    static Darkness upright(Darkness scan, Pose pose) {
        byte[] pixels = new byte[Drawing.WIDTH * Drawing.HEIGHT];
        for (int y = 0; y < Drawing.HEIGHT; y++) {
            for (int x = 0; x < Drawing.WIDTH; x++) {
                double px = (x + 0.5) * Drawing.TENTHS;
                double py = (y + 0.5) * Drawing.TENTHS;
                pixels[y * Drawing.WIDTH + x] =
                        (byte) scan.at(pose.x(px, py) - 0.5, pose.y(px, py) - 0.5);
            }
        }
        return new Darkness(Drawing.WIDTH, Drawing.HEIGHT, pixels).blurred();
    }

    /**
     * By cell how well a page is found in a scan, -1 to 1; NaN where the page has no ink, and where
     * the scanner cut the page off.
     */
    static double[] of(Darkness scan, Pose pose, Darkness upright, Drawing page) {
        double[] all = new double[CELLS];
        for (int cell = 0; cell < CELLS; cell++) {
            all[cell] = isThere(scan, pose, cell) ? inCell(upright, page, cell) : Double.NaN;
        }
        return all;
    }

    private static boolean isThere(Darkness scan, Pose pose, int cell) {
        for (int corner = 0; corner < 4; corner++) {
            double x = (cell % ACROSS + corner % 2) * CELL_WIDTH * Drawing.TENTHS;
            double y = (cell / ACROSS + corner / 2) * CELL_HEIGHT * Drawing.TENTHS;
            double px = pose.x(x, y);
            double py = pose.y(x, y);
            if (px < 0 || py < 0 || px >= scan.width() || py >= scan.height()) {
                return false;
            }
        }
        return true;
    }

    /** The same in one cell. */
    static double inCell(Darkness upright, Drawing page, int cell) {
        if (!hasInk(page, cell)) {
            return Double.NaN;
        }
        double best = -1;
        for (int dy = -SLACK; dy <= SLACK; dy++) {
            for (int dx = -SLACK; dx <= SLACK; dx++) {
                best = Math.max(best, at(page.finest(), upright, cell, dx, dy));
            }
        }
        return best;
    }

    /** Whether two printed pages say something else in a cell, where the first has ink. */
    static boolean differ(Drawing page, Drawing other, int cell) {
        return hasInk(page, cell) && at(page.finest(), other.finest(), cell, 0, 0) < SAME;
    }

    private static boolean hasInk(Drawing page, int cell) {
        double a = 0;
        double aa = 0;
        Darkness drawn = page.finest();
        int left = cell % ACROSS * CELL_WIDTH;
        int top = cell / ACROSS * CELL_HEIGHT;
        for (int y = top; y < top + CELL_HEIGHT; y++) {
            for (int x = left; x < left + CELL_WIDTH; x++) {
                int dark = drawn.at(x, y);
                a += dark;
                aa += dark * dark;
            }
        }
        double n = CELL_WIDTH * CELL_HEIGHT;
        return Math.sqrt(Math.max(0, aa / n - a * a / n / n)) > INK;
    }

    private static double at(Darkness page, Darkness other, int cell, int dx, int dy) {
        int left = cell % ACROSS * CELL_WIDTH;
        int top = cell / ACROSS * CELL_HEIGHT;
        double a = 0;
        double b = 0;
        double aa = 0;
        double bb = 0;
        double ab = 0;
        for (int y = top; y < top + CELL_HEIGHT; y++) {
            for (int x = left; x < left + CELL_WIDTH; x++) {
                int one = page.at(x, y);
                int two = other.at(x + dx, y + dy);
                a += one;
                b += two;
                aa += one * one;
                bb += two * two;
                ab += one * two;
            }
        }
        double n = CELL_WIDTH * CELL_HEIGHT;
        double spread = (n * aa - a * a) * (n * bb - b * b);
        return spread <= 0 ? 0 : (n * ab - a * b) / Math.sqrt(spread);
    }
}
