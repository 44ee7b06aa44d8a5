package paperbark.output.form;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** What can be seen on the first page. */
final class Ink {
    private static final float DPI = 72;

    private Ink() {}

    private static BufferedImage picture(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFRenderer(document).renderImageWithDPI(0, DPI);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether there is ink within a millimetre of a place in millimetres from the top left. */
    static boolean isDark(byte[] pdf, float x, float y) {
        BufferedImage picture = picture(pdf);
        return darkAround(picture, x, y);
    }

    private static boolean darkAround(BufferedImage picture, float x, float y) {
        int left = Math.round(x * DPI / 25.4f);
        int top = Math.round(y * DPI / 25.4f);
        for (int i = left - 2; i <= left + 2; i++) {
            for (int j = top - 2; j <= top + 2; j++) {
                if ((picture.getRGB(i, j) & 0xFF) < 128) {
                    return true;
                }
            }
        }
        return false;
    }

    /** How many of the tick boxes at 20 mm across and 20, 30, 40 mm down are crossed. */
    static int crosses(byte[] pdf) {
        BufferedImage picture = picture(pdf);
        int crosses = 0;
        for (int y = 22; y <= 42; y += 10) {
            crosses += darkAround(picture, 22, y) ? 1 : 0;
        }
        return crosses;
    }

    /** How many dots are dark. */
    static int inkOn(byte[] pdf) {
        BufferedImage picture = picture(pdf);
        int dark = 0;
        for (int x = 0; x < picture.getWidth(); x++) {
            for (int y = 0; y < picture.getHeight(); y++) {
                dark += (picture.getRGB(x, y) & 0xFF) < 128 ? 1 : 0;
            }
        }
        return dark;
    }

    static String pageSize(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDRectangle box = document.getPage(0).getMediaBox();
            return Math.round(box.getWidth()) + " x " + Math.round(box.getHeight());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The size of the smallest letters in points. */
    static float smallestText(byte[] pdf) {
        AtomicReference<Float> smallest = new AtomicReference<>(Float.MAX_VALUE);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition text) {
                    smallest.set(Math.min(smallest.get(), text.getFontSizeInPt()));
                    super.processTextPosition(text);
                }
            }.getText(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return smallest.get();
    }
}
