package paperbark.scan;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.Result;
import com.google.zxing.ResultPoint;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import paperbark.output.PageMark;
import paperbark.output.paper.ScanMark;

/**
 * Reads the scan mark of a page: in the corner where it lies when the page is upright, then in the
 * other corners, then anywhere.
 */
final class MarkReader {
    // Of the page; a page that lies five degrees askew still has its mark there.
    private static final double CORNER_WIDTH = 0.34;
    private static final double CORNER_HEIGHT = 0.2;
    // Half of the way from black to paper.
    private static final double GREY = 0.45;

    private static final Map<DecodeHintType, Object> HARDER = new EnumMap<>(DecodeHintType.class);

    static {
        HARDER.put(DecodeHintType.TRY_HARDER, true);
    }

    private MarkReader() {}

    /** The mark of a page; empty where none of ours can be read. */
    static Optional<Found> read(Grey page) {
        Optional<Found> found = corner(page, true, false);
        found = found.or(() -> corner(page, false, true));
        found = found.or(() -> corner(page, true, true));
        found = found.or(() -> corner(page, false, false));
        return found.or(() -> in(page, 0, 0));
    }

    private static Optional<Found> corner(Grey page, boolean right, boolean low) {
        boolean lies = page.width() > page.height();
        int w = (int) (page.width() * (lies ? CORNER_HEIGHT : CORNER_WIDTH));
        int h = (int) (page.height() * (lies ? CORNER_WIDTH : CORNER_HEIGHT));
        int left = right ? page.width() - w : 0;
        int top = low ? page.height() - h : 0;
        Grey part = page.part(left, top, w, h);
        Optional<Found> plain = in(part, left, top);
        if (plain.isPresent()) {
            return plain;
        }
        int black = part.quantile(5);
        int paper = part.quantile(700);
        return in(part.darkOnly(black + (int) ((paper - black) * GREY)), left, top);
    }

    private static Optional<Found> in(Grey part, int left, int top) {
        PlanarYUVLuminanceSource source =
                new PlanarYUVLuminanceSource(
                        part.pixels(),
                        part.width(),
                        part.height(),
                        0,
                        0,
                        part.width(),
                        part.height(),
                        false);
        return decode(new BinaryBitmap(new HybridBinarizer(source)), left, top)
                .or(
                        () ->
                                decode(
                                        new BinaryBitmap(new GlobalHistogramBinarizer(source)),
                                        left,
                                        top));
    }

    private static Optional<Found> decode(BinaryBitmap bitmap, int left, int top) {
        try {
            Result result = new QRCodeReader().decode(bitmap, HARDER);
            return PageMark.parse(result.getText())
                    .map(mark -> new Found(mark, pose(mark, result.getResultPoints(), left, top)));
        } catch (ReaderException | RuntimeException none) {
            // The library meets pictures of anything; what it cannot make out is no mark.
            return Optional.empty();
        }
    }

    /** From the middles of the three corner squares, which the library gives clockwise. */
    private static Pose pose(PageMark mark, ResultPoint[] points, int left, int top) {
        ScanMark.Spot spot = ScanMark.spot(mark.text());
        double near = spot.size() * 3.5 / spot.modules();
        double far = spot.size() - near;
        double[] px = {spot.left() + near, spot.left() + near, spot.left() + far};
        double[] py = {spot.top() + far, spot.top() + near, spot.top() + near};
        double meanX = 0;
        double meanY = 0;
        double meanU = 0;
        double meanV = 0;
        for (int i = 0; i < 3; i++) {
            meanX += px[i] / 3;
            meanY += py[i] / 3;
            meanU += (points[i].getX() + left) / 3;
            meanV += (points[i].getY() + top) / 3;
        }
        double dot = 0;
        double cross = 0;
        double square = 0;
        for (int i = 0; i < 3; i++) {
            double x = px[i] - meanX;
            double y = py[i] - meanY;
            double u = points[i].getX() + left - meanU;
            double v = points[i].getY() + top - meanV;
            dot += x * u + y * v;
            cross += x * v - y * u;
            square += x * x + y * y;
        }
        double ax = dot / square;
        double ay = cross / square;
        return new Pose(meanU - meanX * ax + meanY * ay, meanV - meanX * ay - meanY * ax, ax, ay);
    }
}
