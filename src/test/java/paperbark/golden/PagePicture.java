package paperbark.golden;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/**
 * Pictures of pages as PDFBox draws them: in this process and from the fonts in the file, so that
 * no program and no font of the machine has a part in them.
 */
final class PagePicture {
    /** Small, yet a digit of the smallest print is still 4 dots wide. */
    static final float DPI = 60;

    private static final int LEVELS = 16;

    private PagePicture() {}

    /** One page, counted from 1, in 16 greys, which keeps the file small. */
    static BufferedImage grey(PDDocument document, int page) throws IOException {
        BufferedImage drawn =
                new PDFRenderer(document).renderImageWithDPI(page - 1, DPI, ImageType.GRAY);
        BufferedImage small =
                new BufferedImage(
                        drawn.getWidth(),
                        drawn.getHeight(),
                        BufferedImage.TYPE_BYTE_BINARY,
                        greys());
        for (int y = 0; y < drawn.getHeight(); y++) {
            for (int x = 0; x < drawn.getWidth(); x++) {
                int level = drawn.getRaster().getSample(x, y, 0) * (LEVELS - 1) + 127;
                small.getRaster().setSample(x, y, 0, level / 255);
            }
        }
        return small;
    }

    /** Pictures side by side, or in rows of so many, on grey. */
    static BufferedImage sheet(List<BufferedImage> pages, int across) {
        int gap = 8;
        int width = pages.get(0).getWidth() + gap;
        int height = pages.get(0).getHeight() + gap;
        int columns = Math.min(across, pages.size());
        int rows = (pages.size() + across - 1) / across;
        BufferedImage sheet =
                new BufferedImage(
                        columns * width + gap, rows * height + gap, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = sheet.createGraphics();
        graphics.setColor(Color.GRAY);
        graphics.fillRect(0, 0, sheet.getWidth(), sheet.getHeight());
        for (int i = 0; i < pages.size(); i++) {
            graphics.drawImage(
                    pages.get(i), gap + i % across * width, gap + i / across * height, null);
        }
        graphics.dispose();
        return sheet;
    }

    /** Stands for a picture that is not there: no page is of its size. */
    static BufferedImage none() {
        return new BufferedImage(1, 1, BufferedImage.TYPE_BYTE_GRAY);
    }

    static void write(BufferedImage picture, Path file) throws IOException {
        Files.createDirectories(file.toAbsolutePath().getParent());
        ImageIO.write(picture, "png", file.toFile());
    }

    private static IndexColorModel greys() {
        byte[] values = new byte[LEVELS];
        for (int i = 0; i < LEVELS; i++) {
            values[i] = (byte) (i * 255 / (LEVELS - 1));
        }
        return new IndexColorModel(4, LEVELS, values, values, values);
    }
}
