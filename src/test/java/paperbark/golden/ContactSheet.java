package paperbark.golden;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/**
 * Draws all pages of a pack, blank backs left out, as one picture: {@code java -cp
 * target/test-classes:target/paperbark.jar paperbark.golden.ContactSheet PACK.pdf PICTURE.png}.
 */
final class ContactSheet {
    private static final float DPI = 34;
    private static final int ACROSS = 6;

    private ContactSheet() {}

    /** Draws the pack named first into the file named second. */
    public static void main(String[] words) throws IOException {
        try (PDDocument pack = Loader.loadPDF(Path.of(words[0]).toFile())) {
            List<BufferedImage> pages = new ArrayList<>();
            for (PackPaper paper : PackPaper.of(pack)) {
                for (int page : paper.pages()) {
                    pages.add(
                            new PDFRenderer(pack).renderImageWithDPI(page - 1, DPI, ImageType.RGB));
                }
            }
            PagePicture.write(PagePicture.sheet(pages, ACROSS), Path.of(words[1]));
        }
    }
}
