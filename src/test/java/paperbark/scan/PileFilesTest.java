package paperbark.scan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceGray;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files as scanners write them, made here by the JDK's own writers. */
class PileFilesTest {
    @TempDir private Path folder;

    /** White with a black square at the top left. */
    private static BufferedImage picture(int type, int width, int height) {
        BufferedImage image = new BufferedImage(width, height, type);
        Graphics2D pen = image.createGraphics();
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, width, height);
        pen.setColor(Color.BLACK);
        pen.fillRect(10, 10, 40, 40);
        pen.dispose();
        return image;
    }

    private Path tiff(String packing, BufferedImage... pages) throws IOException {
        Path file = folder.resolve("pile.tif");
        ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
            writer.setOutput(out);
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionType(packing);
            writer.prepareWriteSequence(null);
            for (BufferedImage page : pages) {
                writer.writeToSequence(new IIOImage(page, null, null), how);
            }
            writer.endWriteSequence();
        }
        writer.dispose();
        return file;
    }

    private static void hasTheSquare(Grey page) {
        assertThat(page.at(30, 30)).isLessThan(40);
        assertThat(page.at(100, 100)).isGreaterThan(215);
        assertThat(page.at(5, 5)).isGreaterThan(215);
    }

    @ParameterizedTest
    @CsvSource({
        "CCITT T.6, 12",
        "CCITT T.4, 12",
        "LZW, 10",
        "Deflate, 5",
        "JPEG, 10",
        "PackBits, 12"
    })
    void aTiffOfSeveralPagesIsReadAndCopied(String packing, int type) throws IOException {
        BufferedImage one = picture(type, 400, 560);
        Path file = tiff(packing, one, picture(type, 560, 400), one);
        try (Pile pile = Pile.open(file);
                PDDocument copy = new PDDocument()) {
            assertThat(pile.pages()).isEqualTo(3);
            hasTheSquare(pile.picture(1));
            assertThat(pile.picture(2).width()).isEqualTo(560);
            pile.copyTo(copy, 3);
            BufferedImage drawn = new PDFRenderer(copy).renderImage(0);
            assertThat(drawn.getWidth() / (double) drawn.getHeight())
                    .isBetween(400 / 560.0 - 0.01, 400 / 560.0 + 0.01);
        }
    }

    @ParameterizedTest
    @CsvSource({"png, 12", "png, 10", "png, 5", "png, 6", "jpg, 10", "jpg, 5"})
    void aPictureIsAPileOfOnePage(String form, int type) throws IOException {
        File file = folder.resolve("page." + form).toFile();
        assertThat(ImageIO.write(picture(type, 400, 560), form, file)).isTrue();
        try (Pile pile = Pile.open(file.toPath());
                PDDocument copy = new PDDocument()) {
            assertThat(pile.pages()).isOne();
            hasTheSquare(pile.picture(1));
            pile.copyTo(copy, 1);
            assertThat(new PDFRenderer(copy).renderImage(0).getRGB(300, 500) & 0xff)
                    .isGreaterThan(215);
        }
    }

    @Test
    void whatCanActIsLeftBehind() throws IOException {
        Path file = folder.resolve("page.pdf");
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            page.getCOSObject().setString("AA", "a script");
            document.addPage(page);
            document.save(file.toFile());
        }
        SeenPage seen = new SeenPage(1, false, Optional.empty(), "", 1, false, List.of());
        Path out = folder.resolve("out.pdf");
        try (var to = Files.newOutputStream(out)) {
            PagesPdf.write(file, List.of(seen), Optional.empty(), "A page", to);
        }
        try (PDDocument written = Loader.loadPDF(out.toFile())) {
            assertThat(written.getPage(0).getRotation()).isEqualTo(90);
            assertThat(written.getPage(0).getCOSObject().containsKey("AA")).isFalse();
        }
    }

    @Test
    void whatCannotBeReadIsRefusedInASentence() throws IOException {
        refused(Files.write(folder.resolve("a.pdf"), new byte[0]), "no PDF and no picture");
        refused(Files.writeString(folder.resolve("b.pdf"), "%PDF-1.4 cut"), "damaged or locked");
        refused(Files.writeString(folder.resolve("c.docx"), "PK"), "no PDF and no picture");
        Path whole = tiff("Deflate", picture(10, 400, 560));
        byte[] bytes = Files.readAllBytes(whole);
        Path cut = Files.write(folder.resolve("d.tif"), java.util.Arrays.copyOf(bytes, 60));
        refused(cut, "damaged or locked");
        Path locked = folder.resolve("e.pdf");
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage());
            document.protect(new StandardProtectionPolicy("a", "b", new AccessPermission()));
            document.save(locked.toFile());
        }
        refused(locked, "damaged or locked");
    }

    @Test
    void aPagePackedAsNobodyHereReadsItIsNamed() throws IOException {
        Path file = folder.resolve("page.pdf");
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            document.addPage(page);
            PDImageXObject image =
                    new PDImageXObject(
                            document,
                            new java.io.ByteArrayInputStream(new byte[20]),
                            COSName.JBIG2_DECODE,
                            400,
                            560,
                            1,
                            PDDeviceGray.INSTANCE);
            try (PDPageContentStream out = new PDPageContentStream(document, page)) {
                out.drawImage(image, 0, 0, 400, 560);
            }
            document.save(file.toFile());
        }
        refused(file, "Page 1 is packed as JBIG2");
    }

    private static void refused(Path file, String why) {
        assertThatThrownBy(
                        () ->
                                PileReader.read(
                                        file,
                                        mark -> {
                                            throw new AssertionError("nothing to ask");
                                        },
                                        1))
                .isInstanceOf(UnreadablePile.class)
                .hasMessageContaining(why);
    }

    @Test
    void aPageOfTooManyPixelsIsRefusedBeforeItIsUnpacked() throws IOException {
        Path file = folder.resolve("bomb.png");
        // The head of a picture of 60,000 by 60,000 pixels; there is nothing behind it.
        ImageIO.write(picture(10, 8, 8), "png", file.toFile());
        byte[] png = Files.readAllBytes(file);
        java.nio.ByteBuffer.wrap(png).putInt(16, 60_000).putInt(20, 60_000);
        java.util.zip.CRC32 sum = new java.util.zip.CRC32();
        sum.update(png, 12, 17);
        java.nio.ByteBuffer.wrap(png).putInt(29, (int) sum.getValue());
        Files.write(file, png);
        refused(file, "60000 by 60000 pixels");
    }
}
