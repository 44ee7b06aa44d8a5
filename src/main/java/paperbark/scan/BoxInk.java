package paperbark.scan;

import paperbark.output.paper.SignBox;

/**
 * Measures the ink in a box. The printed edges of the box tell where exactly it lies; what is dark
 * within them was not printed. Figures were found on made piles, see {@code PileTest}; no source.
 */
final class BoxInk {
    /** Less than so many hundredths of a square millimetre of ink is no writing. */
    static final double LEAST_INK = 150;

    private static final double FAR = 38;
    private static final double COARSE = 4;
    private static final double FINE = 1.2;
    private static final double MOST_TURN = Math.toRadians(0.6);
    private static final double STEP = 1.6;
    private static final double INSET = 11;
    private static final double LEAST_CONTRAST = 25;

    private final Grey page;
    private final SignBox box;
    private final double middleX;
    private final double middleY;

    private BoxInk(Grey page, SignBox box) {
        this.page = page;
        this.box = box;
        middleX = box.left() + box.width() / 2.0;
        middleY = box.top() + box.height() / 2.0;
    }

    /**
     * What was seen.
     *
     * @param found whether the edges of the box were found; nothing else is known otherwise
     * @param ink hundredths of a square millimetre of ink
     * @param pose how the page lies about the box
     */
    record Seen(boolean found, double ink, Pose pose) {
        boolean isBlank() {
            return found && ink < LEAST_INK;
        }
    }

    /** Looks into a box of a page that lies about as the pose says. */
    static Seen measure(Grey page, Pose pose, SignBox box) {
        BoxInk look = new BoxInk(page, box);
        Pose coarse = look.best(pose, FAR, COARSE, MOST_TURN, MOST_TURN / 2);
        Pose fine = look.best(coarse, COARSE, FINE, MOST_TURN / 4, MOST_TURN / 8);
        double contrast = look.contrast(fine);
        return contrast < LEAST_CONTRAST
                ? new Seen(false, 0, fine)
                : new Seen(true, look.ink(fine), fine);
    }

    private Pose best(Pose from, double reach, double step, double turn, double turnStep) {
        Pose best = from;
        double most = contrast(from);
        for (double radians = -turn; radians <= turn + 1e-9; radians += turnStep) {
            for (double dy = -reach; dy <= reach + 1e-9; dy += step) {
                for (double dx = -reach; dx <= reach + 1e-9; dx += step) {
                    Pose tried = from.about(middleX, middleY, dx, dy, radians);
                    double contrast = contrast(tried);
                    if (contrast > most) {
                        most = contrast;
                        best = tried;
                    }
                }
            }
        }
        return best;
    }

    /**
     * How much darker the edges of the box are than what lies a little within them. Each edge
     * counts as much as another, since the long ones go on beyond the box.
     */
    private double contrast(Pose pose) {
        double stepX = Math.max(STEP * 4, box.width() / 60.0);
        double level = 0;
        int n = 0;
        for (double x = 8; x < box.width() - 8; x += stepX) {
            level += edge(pose, x, 0, x, 6) + edge(pose, x, box.height(), x, box.height() - 6.0);
            n += 2;
        }
        double upright = 0;
        int m = 0;
        for (double y = 8; y < box.height() - 8; y += STEP * 3) {
            upright += edge(pose, 0, y, 6, y) + edge(pose, box.width(), y, box.width() - 6.0, y);
            m += 2;
        }
        return n == 0 || m == 0 ? 0 : (level / n + upright / m) / 2;
    }

    private double edge(Pose pose, double x, double y, double withinX, double withinY) {
        return shade(pose, withinX, withinY) - shade(pose, x, y);
    }

    private int shade(Pose pose, double x, double y) {
        double px = box.left() + x;
        double py = box.top() + y;
        return page.at((int) (pose.x(px, py)), (int) (pose.y(px, py)));
    }

    private double ink(Pose pose) {
        int columns = (int) ((box.width() - 2 * INSET) / STEP);
        int rows = (int) ((box.height() - 2 * INSET) / STEP);
        if (columns < 3 || rows < 3) {
            return LEAST_INK;
        }
        int[] shades = new int[columns * rows];
        int[] counts = new int[256];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                int shade = shade(pose, INSET + c * STEP, INSET + r * STEP);
                shades[r * columns + c] = shade;
                counts[shade]++;
            }
        }
        int paper = middle(counts, shades.length);
        int black = black(pose);
        int darkest = paper - Math.max(28, (int) ((paper - black) * 0.28));
        int dark = 0;
        for (int r = 1; r < rows - 1; r++) {
            for (int c = 1; c < columns - 1; c++) {
                if (shades[r * columns + c] < darkest
                        && neighbours(shades, columns, r, c, darkest) >= 2) {
                    dark++;
                }
            }
        }
        return dark * STEP * STEP;
    }

    private static int neighbours(int[] shades, int columns, int r, int c, int darkest) {
        int n = 0;
        for (int dr = -1; dr <= 1; dr++) {
            for (int dc = -1; dc <= 1; dc++) {
                boolean self = dr == 0 && dc == 0;
                n += !self && shades[(r + dr) * columns + c + dc] < darkest ? 1 : 0;
            }
        }
        return n;
    }

    private static int middle(int[] counts, int all) {
        int so = 0;
        for (int shade = 0; shade < 256; shade++) {
            so += counts[shade];
            if (so * 2 > all) {
                return shade;
            }
        }
        return 255;
    }

    private int black(Pose pose) {
        int[] counts = new int[256];
        int n = 0;
        for (double x = 8; x < box.width() - 8; x += STEP) {
            counts[shade(pose, x, 0)]++;
            counts[shade(pose, x, box.height())]++;
            n += 2;
        }
        return middle(counts, n);
    }
}
