package paperbark.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import paperbark.output.paper.SignBox;

/** The map of a batch's pages, held against the pages themselves as PDFBox draws them. */
class PageMapTest {

    @Test
    void everyBoxIsEmptyOnThePrintedPageAndHasBlackEdges() throws Exception {
        Path batch = SampleWeek.published();
        PageMap map = PageMap.in(batch).orElseThrow();
        PageMap.PackPages job = map.of("SB-1102").orElseThrow();
        List<SignBox> boxes = job.papers().stream().flatMap(p -> p.boxes().stream()).toList();
        assertThat(boxes).extracting(SignBox::what).contains("Signature", "Date");
        assertThat(boxes).extracting(SignBox::who).contains("Owner", "Installer");
        try (PDDocument pack = Loader.loadPDF(batch.resolve("packs/SB-1102.pdf").toFile())) {
            PDFRenderer renderer = new PDFRenderer(pack);
            for (SignBox box : boxes) {
                int[][] grey = grey(renderer, box.packPage());
                assertThat(darkest(grey, box, 8)).as("%s", box).isGreaterThan(200);
                assertThat(darkest(grey, box, -3)).as("%s", box).isLessThan(100);
            }
        }
    }

    @Test
    void tellsOfNobody() throws Exception {
        assertThat(Files.readString(SampleWeek.published().resolve(PageMap.FILE)))
                .contains("SB-1102")
                .doesNotContain("Amberwood", "0491", "000-000", "Lane", "Road");
    }

    // At 254 dots an inch a tenth of a millimetre is a dot.
    private static int[][] grey(PDFRenderer renderer, int page) throws Exception {
        var image = renderer.renderImageWithDPI(page - 1, 254, ImageType.GRAY);
        int[][] grey = new int[image.getHeight()][image.getWidth()];
        for (int y = 0; y < grey.length; y++) {
            for (int x = 0; x < grey[y].length; x++) {
                grey[y][x] = image.getRaster().getSample(x, y, 0);
            }
        }
        return grey;
    }

    private static int darkest(int[][] grey, SignBox box, int inset) {
        int darkest = 255;
        for (int y = box.top() + inset; y < box.top() + box.height() - inset; y++) {
            for (int x = box.left() + inset; x < box.left() + box.width() - inset; x++) {
                darkest = Math.min(darkest, grey[y][x]);
            }
        }
        return darkest;
    }
}
