package paperbark.output.paper;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** One paper taken out of a pack, to be looked at: its pages alone, or pictures of them. */
public final class Excerpt {
    // Sharp on a screen, and the smallest print can be read.
    private static final int DOTS_PER_INCH = 144;

    private Excerpt() {}

    /**
     * The pages of a paper.
     *
     * @param paper its place in the pack, from 0
     */
    public static byte[] of(Pack pack, int paper) {
        if (pack.papers().size() == 1) {
            return pack.pdf();
        }
        PaperPages at = pack.papers().get(paper);
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            for (int page = document.getNumberOfPages(); page >= 1; page--) {
                if (page < at.firstPage() || page >= at.firstPage() + at.pageCount()) {
                    document.removePage(page - 1);
                }
            }
            document.getDocumentCatalog().setDocumentOutline(null);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Each page as a PNG. */
    public static List<byte[]> pictures(byte[] pdf) {
        List<byte[]> pictures = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFRenderer renderer = new PDFRenderer(document);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                BufferedImage image =
                        renderer.renderImageWithDPI(page, DOTS_PER_INCH, ImageType.RGB);
                ByteArrayOutputStream out = new ByteArrayOutputStream();
                ImageIO.write(image, "png", out);
                pictures.add(out.toByteArray());
            }
            return pictures;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
