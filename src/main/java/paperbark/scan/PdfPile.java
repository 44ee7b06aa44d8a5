package paperbark.scan;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorName;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.filter.MissingImageReaderException;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import paperbark.output.RunLimit;

/**
 * Pages as a PDF. A page that is nothing but an upright picture is taken as that picture; any other
 * is drawn.
 */
final class PdfPile implements Pile {
    private static final int DPI = 200;
    private static final int POINTS_PER_INCH = 72;
    private static final int MOST_OPERATORS = 40;

    private final PDDocument document;
    private final PDFRenderer renderer;

    PdfPile(Path file) throws IOException {
        document = Loader.loadPDF(new RandomAccessReadBufferedFile(file));
        renderer = new PDFRenderer(document);
    }

    @Override
    public int pages() {
        return document.getNumberOfPages();
    }

    @Override
    public Grey picture(int number) throws IOException {
        try {
            PDPage page = document.getPage(number - 1);
            Optional<PDImageXObject> image = onlyImage(page);
            return image.isPresent() ? decoded(image.get()) : drawn(number, DPI);
        } catch (UnreadablePile told) {
            throw told;
        } catch (MissingImageReaderException e) {
            throw new UnreadablePile(
                    "Page " + number + " is packed as JBIG2 or JPEG 2000, which is not read here.",
                    "Set the scanner to an ordinary PDF, or to TIFF.");
        } catch (IOException | RuntimeException e) {
            throw Piles.damaged();
        }
    }

    /** A page as it is drawn with so many dots an inch. */
    Grey drawn(int number, int dpi) throws IOException {
        PDPage page = document.getPage(number - 1);
        double inches = 1.0 / POINTS_PER_INCH * dpi;
        Piles.refuseHuge(
                (long) (page.getCropBox().getWidth() * inches),
                (long) (page.getCropBox().getHeight() * inches));
        return RunLimit.USUAL.<Grey, IOException>run(
                () -> Grey.of(renderer.renderImageWithDPI(number - 1, dpi, ImageType.GRAY)),
                () -> {});
    }

    private static Grey decoded(PDImageXObject image) throws IOException {
        Piles.refuseHuge(image.getWidth(), image.getHeight());
        if (isJpeg(image)) {
            try (InputStream in = image.getCOSObject().createRawInputStream()) {
                return brightness(in.readAllBytes());
            }
        }
        return Grey.of(image.getImage());
    }

    private static boolean isJpeg(PDImageXObject image) {
        List<COSName> filters = image.getStream().getFilters();
        return filters != null
                && filters.size() == 1
                && (filters.get(0).equals(COSName.DCT_DECODE)
                        || filters.get(0).equals(COSName.DCT_DECODE_ABBREVIATION));
    }

    private static Grey brightness(byte[] jpeg) throws IOException {
        ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
        try (ImageInputStream in =
                new MemoryCacheImageInputStream(new ByteArrayInputStream(jpeg))) {
            reader.setInput(in);
            Piles.refuseHuge(reader.getWidth(0), reader.getHeight(0));
            return Grey.ofFirstBand(reader.readRaster(0, null));
        } finally {
            reader.dispose();
        }
    }

    /** The picture that a page consists of, where it stands upright and nothing else is there. */
    private static Optional<PDImageXObject> onlyImage(PDPage page) throws IOException {
        if (page.getRotation() != 0 || !page.getAnnotations().isEmpty()) {
            return Optional.empty();
        }
        PDFStreamParser parser = new PDFStreamParser(page);
        List<Object> tokens = parser.parse();
        if (tokens.size() > MOST_OPERATORS) {
            return Optional.empty();
        }
        Optional<PDImageXObject> found = Optional.empty();
        for (int i = 0; i < tokens.size(); i++) {
            if (!(tokens.get(i) instanceof Operator operator)) {
                continue;
            }
            switch (operator.getName()) {
                case OperatorName.SAVE, OperatorName.RESTORE -> {
                    // Changes nothing that is seen.
                }
                case OperatorName.CONCAT -> {
                    if (!isUpright(tokens, i)) {
                        return Optional.empty();
                    }
                }
                case OperatorName.DRAW_OBJECT -> {
                    if (found.isPresent()) {
                        return Optional.empty();
                    }
                    found = image(page, tokens.get(i - 1));
                    if (found.isEmpty()) {
                        return Optional.empty();
                    }
                }
                default -> {
                    return Optional.empty();
                }
            }
        }
        return found;
    }

    private static boolean isUpright(List<Object> tokens, int at) {
        for (int i = at - 6; i < at - 2; i++) {
            float value = i >= 0 && tokens.get(i) instanceof COSNumber n ? n.floatValue() : 0;
            boolean size = i == at - 6 || i == at - 3;
            if (size ? value <= 0 : value != 0) {
                return false;
            }
        }
        return true;
    }

    private static Optional<PDImageXObject> image(PDPage page, Object name) throws IOException {
        PDXObject object =
                name instanceof COSName n && page.getResources() != null
                        ? page.getResources().getXObject(n)
                        : null;
        return object instanceof PDImageXObject image && image.getSoftMask() == null
                ? Optional.of(image)
                : Optional.empty();
    }

    @Override
    public PDPage copyTo(PDDocument target, int number) throws IOException {
        PDPage from = document.getPage(number - 1);
        PDPage copy = target.importPage(from);
        copy.setResources(from.getResources());
        copy.setRotation(from.getRotation());
        return copy;
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
