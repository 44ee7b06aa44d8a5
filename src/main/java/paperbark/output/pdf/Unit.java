package paperbark.output.pdf;

/**
 * The unit of lengths on a page: a ten-thousandth of a point. The layout's own unit is 375 of them,
 * so that what it drew is kept exactly, and a picture of the page is the same to the dot.
 */
final class Unit {
    /** So many are one unit of the layout. */
    static final long OF_THE_LAYOUT = 375;

    /** One unit of the layout in points. */
    static final String SCALE = ".0375";

    private static final double IN_A_POINT = 10_000;

    private Unit() {}

    /** Whether a length is so many whole units of the layout. */
    static boolean isWhole(long length) {
        return length % OF_THE_LAYOUT == 0;
    }

    /** A length in points. */
    static long of(double points) {
        return Math.round(points * IN_A_POINT);
    }
}
