package paperbark.scan;

import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.CCITTFactory;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** Pages as a TIFF file of one or several pictures, or as a JPEG or PNG picture. */
final class PicturePile implements Pile {
    private static final float QUALITY = 0.9f;

    private final Path file;
    private final String form;
    private final ImageInputStream in;
    private final ImageReader reader;
    private final int pages;

    PicturePile(Path file, String form) throws IOException {
        this.file = file;
        this.form = form;
        // Read as it is asked for, never copied to a file of the library's.
        this.in = new FileImageInputStream(file.toFile());
        this.reader = ImageIO.getImageReadersByFormatName(form).next();
        try {
            reader.setInput(in);
            pages = form.equals("tiff") ? reader.getNumImages(true) : 1;
        } catch (IOException | RuntimeException e) {
            close();
            throw e;
        }
    }

    @Override
    public int pages() {
        return pages;
    }

    @Override
    public Grey picture(int number) throws IOException {
        try {
            refuseHuge(number);
            if (form.equals("jpeg")) {
                return Grey.ofFirstBand(reader.readRaster(0, null));
            }
            return Grey.of(reader.read(number - 1));
        } catch (UnreadablePile told) {
            throw told;
        } catch (IOException | RuntimeException e) {
            throw Piles.damaged();
        }
    }

    private void refuseHuge(int number) throws IOException {
        Piles.refuseHuge(reader.getWidth(number - 1), reader.getHeight(number - 1));
    }

    @Override
    public PDPage copyTo(PDDocument document, int number) throws IOException {
        refuseHuge(number);
        PDImageXObject image = image(document, number);
        PDRectangle a4 = PDRectangle.A4;
        boolean lies = image.getWidth() > image.getHeight();
        float width = lies ? a4.getHeight() : a4.getWidth();
        PDRectangle size = new PDRectangle(width, width * image.getHeight() / image.getWidth());
        PDPage page = new PDPage(size);
        document.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(document, page)) {
            out.drawImage(image, 0, 0, size.getWidth(), size.getHeight());
        }
        return page;
    }

    private PDImageXObject image(PDDocument document, int number) throws IOException {
        if (form.equals("jpeg")) {
            return JPEGFactory.createFromByteArray(document, Files.readAllBytes(file));
        }
        BufferedImage image = reader.read(number - 1);
        boolean twoTone =
                image.getSampleModel().getNumBands() == 1
                        && image.getSampleModel().getSampleSize(0) == 1;
        if (twoTone) {
            return CCITTFactory.createFromImage(document, image);
        }
        return JPEGFactory.createFromImage(document, opaque(image), QUALITY);
    }

    private static BufferedImage opaque(BufferedImage image) {
        boolean plain =
                image.getSampleModel().getDataType() == DataBuffer.TYPE_BYTE
                        && !image.getColorModel().hasAlpha()
                        && image.getType() != BufferedImage.TYPE_CUSTOM;
        if (plain) {
            return image;
        }
        return Grey.of(image).image();
    }

    @Override
    public void close() throws IOException {
        reader.dispose();
        in.close();
    }
}
