package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.CaseFiles;
import paperbark.output.PageMark;

class ScanMarkTest {
    // What a fax in fine mode keeps of a page.
    private static final int FAX_DPI = 200;

    @TempDir private Path folder;

    @Test
    void canBeReadOffEveryPageAtTheSharpnessOfAFax() throws Exception {
        Pack pack = new Packs(Optional.empty()).make(CaseFiles.installedSolar(), List.of());

        for (byte[] pdf : List.of(pack.pdf(), PrintRuns.of(folder, List.of(pack)))) {
            try (PDDocument document = Loader.loadPDF(pdf)) {
                for (PaperPages paper : pack.papers()) {
                    for (int page = paper.firstPage(); page <= paper.lastPage(); page++) {
                        assertThat(read(document, page))
                                .isEqualTo(
                                        PageMark.of(
                                                        "SB-1032",
                                                        paper.kind().folder(),
                                                        page,
                                                        pack.caseFile().batch().id())
                                                .text());
                    }
                }
            }
        }
    }

    private static String read(PDDocument document, int page) throws Exception {
        BufferedImage image =
                new PDFRenderer(document).renderImageWithDPI(page - 1, FAX_DPI, ImageType.BINARY);
        int width = image.getWidth() / 4;
        int height = image.getHeight() / 10;
        int[] pixels = image.getRGB(image.getWidth() - width, 0, width, height, null, 0, width);
        LuminanceSource source = new RGBLuminanceSource(width, height, pixels);
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source))).getText();
    }

    @Test
    void shortensAReferenceThatWouldMakeItTooFine() {
        PageMark mark = PageMark.of("x".repeat(300), "stc", 4, "week");
        assertThat(mark.text()).matches("x{60}\\|stc\\|4\\|[A-Z2-7]{4}");
        assertThat(PageMark.parse(mark.text())).contains(mark);
    }

    @Test
    void tellsTheBatchAndPagesOfEarlierProgramsDoNot() {
        assertThat(PageMark.of("SB-1032", "stc", 4, "one"))
                .isNotEqualTo(PageMark.of("SB-1032", "stc", 4, "two"));
        assertThat(PageMark.parse("SB-1032|stc|4"))
                .contains(new PageMark("SB-1032", "stc", 4, Optional.empty()));
        assertThat(PageMark.parse("A|B|stc|4|K3QA").orElseThrow().job()).isEqualTo("A|B");
        assertThat(List.of("https://example.com/", "SB-1032|stc|0", "SB-1032|stc", "|stc|1"))
                .allMatch(text -> PageMark.parse(text).isEmpty());
    }
}
