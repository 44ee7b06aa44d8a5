package paperbark.scan;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.CCITTFactory;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import paperbark.output.paper.SignBox;

/** A small pile of pages as a scanner gives them: black and white at 150 dots an inch. */
public final class Scanned implements AutoCloseable {
    private static final int DPI = 150;
    private static final double DOTS = DPI / 254.0;

    private final PDDocument pile = new PDDocument();

    /**
     * Adds a page of a pack.
     *
     * @param page from 1
     * @param signed the boxes that somebody wrote in; those of other pages are left out
     * @param marked whether the mark can be seen
     * @param upsideDown whether it lies so
     */
    public Scanned page(
            Path pack, int page, List<SignBox> signed, boolean marked, boolean upsideDown)
            throws IOException {
        BufferedImage image;
        try (PDDocument document = Loader.loadPDF(pack.toFile())) {
            image = new PDFRenderer(document).renderImageWithDPI(page - 1, DPI, ImageType.BINARY);
        }
        Graphics2D pen = image.createGraphics();
        pen.setColor(Color.BLACK);
        pen.setStroke(new BasicStroke(3));
        for (SignBox box : signed) {
            if (box.packPage() == page) {
                int x = (int) ((box.left() + box.width() * 0.2) * DOTS);
                int y = (int) ((box.top() + box.height() * 0.3) * DOTS);
                pen.drawLine(x, y, x + 60, y + 20);
                pen.drawLine(x + 60, y + 20, x + 90, y);
            }
        }
        if (!marked) {
            pen.setColor(Color.WHITE);
            pen.fillRect(image.getWidth() * 4 / 5, 0, image.getWidth() / 5, 140);
        }
        pen.dispose();
        return put(upsideDown ? turned(image) : image);
    }

    /** Adds the empty back of a sheet. */
    public Scanned empty() throws IOException {
        BufferedImage image = new BufferedImage(1240, 1754, BufferedImage.TYPE_BYTE_BINARY);
        Graphics2D pen = image.createGraphics();
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, 1240, 1754);
        pen.dispose();
        return put(image);
    }

    private static BufferedImage turned(BufferedImage image) {
        BufferedImage turned =
                new BufferedImage(
                        image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_BINARY);
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                turned.setRGB(
                        image.getWidth() - 1 - x, image.getHeight() - 1 - y, image.getRGB(x, y));
            }
        }
        return turned;
    }

    private Scanned put(BufferedImage image) throws IOException {
        PDPage page = new PDPage(PDRectangle.A4);
        pile.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(pile, page)) {
            out.drawImage(
                    CCITTFactory.createFromImage(pile, image),
                    0,
                    0,
                    PDRectangle.A4.getWidth(),
                    PDRectangle.A4.getHeight());
        }
        return this;
    }

    /** Writes the pile. */
    public void save(Path file) throws IOException {
        // The same pages give the same bytes.
        pile.setDocumentId(1L);
        pile.save(file.toFile());
    }

    @Override
    public void close() throws IOException {
        pile.close();
    }
}
