package paperbark.output.paper;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.EnumMap;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import paperbark.output.pdf.SlimPages;

/**
 * The small QR mark at the top right of every page, by which a stack of signed papers can be sorted
 * again, see {@link paperbark.output.PageMark}. Drawn as filled boxes: sharp at any size, and no
 * picture to encode for each document.
 */
public final class ScanMark {
    private static final float POINTS_PER_MM = 72f / 25.4f;
    private static final float SIZE = 13 * POINTS_PER_MM;
    private static final float FROM_RIGHT = 14 * POINTS_PER_MM;
    private static final float FROM_TOP = 8 * POINTS_PER_MM;
    // Trying all eight masks costs a tenth of the time of a pack; any of them can be read.
    private static final int MASK = 3;

    private static final float TENTHS_PER_POINT = 254f / 72;
    private static final float PAGE_WIDTH = 2100;

    // Viewers smooth small pictures; the white around it is what readers look for.
    private static final int DOTS = 8;
    private static final int QUIET = 2;
    private static final int WHITE = 0xffffff;

    // About as long as a mark is, in letters.
    private static final int PATH = 2048;

    private final ByteMatrix modules;

    /** The mark that says a text, see {@link paperbark.output.PageMark}. */
    ScanMark(String text) {
        modules = modules(text);
    }

    /**
     * Where a mark lies on an A4 page, in tenths of a millimetre.
     *
     * @param left its left edge
     * @param top its upper edge
     * @param size its width and height
     * @param modules so many squares a line
     */
    public record Spot(float left, float top, float size, int modules) {}

    /** Where the mark with that text lies. */
    public static Spot spot(String text) {
        float size = SIZE * TENTHS_PER_POINT;
        return new Spot(
                PAGE_WIDTH - FROM_RIGHT * TENTHS_PER_POINT - size,
                FROM_TOP * TENTHS_PER_POINT,
                size,
                modules(text).getWidth());
    }

    /** A mark that says a text, as the address of a picture that holds it, for labels. */
    static String picture(String text) {
        ByteMatrix modules = modules(text);
        int size = (modules.getWidth() + 2 * QUIET) * DOTS;
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_BYTE_BINARY);
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++) {
                image.setRGB(
                        x, y, isBlack(modules, x / DOTS - QUIET, y / DOTS - QUIET) ? 0 : WHITE);
            }
        }
        try (ByteArrayOutputStream png = new ByteArrayOutputStream()) {
            ImageIO.write(image, "png", png);
            return "data:image/png;base64," + Base64.getEncoder().encodeToString(png.toByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isBlack(ByteMatrix modules, int x, int y) {
        boolean inside = x >= 0 && y >= 0 && x < modules.getWidth() && y < modules.getHeight();
        return inside && modules.get(x, y) == 1;
    }

    /** Draws the mark on a finished page. */
    void draw(SlimPages drawn, PDPage page) throws IOException {
        drawn.add(page, content(page.getMediaBox()).getBytes(StandardCharsets.US_ASCII));
    }

    /** One path in modules, so that its numbers are whole and short. */
    private String content(PDRectangle page) {
        float module = SIZE / modules.getWidth();
        StringBuilder path = new StringBuilder(PATH).append("/Artifact BMC\nq\n0 g\n");
        path.append(decimal(module, 4)).append(" 0 0 ").append(decimal(-module, 4)).append(' ');
        path.append(decimal(page.getWidth() - FROM_RIGHT - SIZE, 2)).append(' ');
        path.append(decimal(page.getHeight() - FROM_TOP, 2)).append(" cm\n");
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                int run = run(x, y);
                if (run > 0 && !isSame(x, y - 1, run)) {
                    int rows = 1;
                    while (isSame(x, y + rows, run)) {
                        rows++;
                    }
                    path.append(x).append(' ').append(y).append(' ').append(run).append(' ');
                    path.append(rows).append(" re\n");
                }
                x += run;
            }
        }
        return path.append("f\nQ\nEMC\n").toString();
    }

    private static String decimal(double number, int decimals) {
        return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    }

    /** How many black modules follow in a row, from the first of them on. */
    private int run(int x, int y) {
        int end = x;
        while (end < modules.getWidth() && modules.get(end, y) == 1) {
            end++;
        }
        return end - x;
    }

    /** Whether a row has such a run at the same place. */
    private boolean isSame(int x, int y, int run) {
        return y >= 0
                && y < modules.getHeight()
                && (x == 0 || modules.get(x - 1, y) == 0)
                && run(x, y) == run;
    }

    private static ByteMatrix modules(String text) {
        try {
            // Plain references carry no character-set switch, which some simple readers trip over.
            boolean plain = text.chars().allMatch(c -> c < 128);
            Map<EncodeHintType, Object> hints = new EnumMap<>(EncodeHintType.class);
            hints.put(EncodeHintType.QR_MASK_PATTERN, MASK);
            if (!plain) {
                hints.put(EncodeHintType.CHARACTER_SET, "UTF-8");
            }
            return Encoder.encode(text, ErrorCorrectionLevel.M, hints).getMatrix();
        } catch (WriterException e) {
            throw new IllegalStateException("a short text always fits a mark", e);
        }
    }
}
