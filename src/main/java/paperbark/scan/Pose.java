package paperbark.scan;

/**
 * How a page lies in a picture: turned, scaled and moved. Points on the page are in tenths of a
 * millimetre from its top left corner.
 *
 * @param originX where the page's corner lies, in pixels
 * @param originY likewise
 * @param alongX pixels to the right for a tenth of a millimetre along the page's upper edge
 * @param alongY pixels down for the same
 */
record Pose(double originX, double originY, double alongX, double alongY) {

    double x(double pageX, double pageY) {
        return originX + pageX * alongX - pageY * alongY;
    }

    double y(double pageX, double pageY) {
        return originY + pageX * alongY + pageY * alongX;
    }

    /** Pixels a tenth of a millimetre. */
    double scale() {
        return Math.hypot(alongX, alongY);
    }

    /** Quarter turns to the right after which the page stands upright. */
    int quarterTurns() {
        double degrees = Math.toDegrees(Math.atan2(alongY, alongX));
        return Math.floorMod(-(int) Math.round(degrees / 90), 4);
    }

    /** The same page with a point of it moved by so much on it, and turned about that point. */
    Pose about(double pageX, double pageY, double dx, double dy, double radians) {
        double cos = Math.cos(radians);
        double sin = Math.sin(radians);
        double ax = alongX * cos - alongY * sin;
        double ay = alongX * sin + alongY * cos;
        double px = x(pageX + dx, pageY + dy);
        double py = y(pageX + dx, pageY + dy);
        return new Pose(px - pageX * ax + pageY * ay, py - pageX * ay - pageY * ax, ax, ay);
    }

    /** The same with another scale, the given point of the page staying where it is. */
    Pose scaled(double scale, double pageX, double pageY) {
        double by = scale / scale();
        double ax = alongX * by;
        double ay = alongY * by;
        return new Pose(
                x(pageX, pageY) - pageX * ax + pageY * ay,
                y(pageX, pageY) - pageX * ay - pageY * ax,
                ax,
                ay);
    }

    /** The same in a picture each pixel of which was a square of so many. */
    Pose inReduced(int by) {
        return new Pose(originX / by, originY / by, alongX / by, alongY / by);
    }
}
