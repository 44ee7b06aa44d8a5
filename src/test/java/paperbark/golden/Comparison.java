package paperbark.golden;

import java.awt.Color;
import java.awt.image.BufferedImage;

/**
 * How a picture differs from the one it is held against.
 *
 * @param differing how many dots differ by more than {@link #TOLERANCE} in a channel
 * @param dots how many dots there are
 * @param sameSize whether both are equally wide and high; nothing is counted otherwise
 */
record Comparison(int differing, int dots, boolean sameSize) {
    /** Of 255: what another drawing of the same edge may differ by. */
    static final int TOLERANCE = 40;

    /** One dot in so many may differ: fewer than a changed digit of the smallest print brings. */
    static final int ONE_IN = 100_000;

    static Comparison of(BufferedImage expected, BufferedImage actual) {
        if (!sameSize(expected, actual)) {
            return new Comparison(0, expected.getWidth() * expected.getHeight(), false);
        }
        int differing = 0;
        for (int y = 0; y < expected.getHeight(); y++) {
            for (int x = 0; x < expected.getWidth(); x++) {
                differing += differs(expected.getRGB(x, y), actual.getRGB(x, y)) ? 1 : 0;
            }
        }
        return new Comparison(differing, expected.getWidth() * expected.getHeight(), true);
    }

    /** Whether the pictures show the same. */
    boolean isSame() {
        return sameSize && (long) differing * ONE_IN <= dots;
    }

    /** The actual picture made pale, with the differing dots in red; alone when sizes differ. */
    static BufferedImage difference(BufferedImage expected, BufferedImage actual) {
        BufferedImage shown =
                new BufferedImage(
                        actual.getWidth(), actual.getHeight(), BufferedImage.TYPE_INT_RGB);
        boolean comparable = sameSize(expected, actual);
        for (int y = 0; y < actual.getHeight(); y++) {
            for (int x = 0; x < actual.getWidth(); x++) {
                int dot = actual.getRGB(x, y);
                boolean red = comparable && differs(expected.getRGB(x, y), dot);
                int pale = 192 + (dot & 0xFF) / 4;
                shown.setRGB(x, y, (red ? Color.RED : new Color(pale, pale, pale)).getRGB());
            }
        }
        return shown;
    }

    private static boolean sameSize(BufferedImage one, BufferedImage other) {
        return one.getWidth() == other.getWidth() && one.getHeight() == other.getHeight();
    }

    private static boolean differs(int one, int other) {
        for (int shift = 0; shift < 24; shift += 8) {
            if (Math.abs((one >> shift & 0xFF) - (other >> shift & 0xFF)) > TOLERANCE) {
                return true;
            }
        }
        return false;
    }
}
