package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.junit.jupiter.api.Test;
import paperbark.output.CaseFiles;

class PrintRunTest {
    private static final Packs PACKS = new Packs(Optional.empty());
    private static final List<Pack> TWO =
            List.of(PACKS.make(CaseFiles.installedSolar()), PACKS.make(CaseFiles.bookedHeatPump()));

    @Test
    void beginsEveryPaperOnAFreshSheet() throws IOException {
        try (PDDocument run = Loader.loadPDF(PrintRun.of(TWO))) {
            List<String> titles = new ArrayList<>();
            for (PDOutlineItem job : run.getDocumentCatalog().getDocumentOutline().children()) {
                titles.add(job.getTitle());
                for (PDOutlineItem paper : job.children()) {
                    int page = ((PDPageDestination) paper.getDestination()).retrievePageNumber();
                    assertThat(page % 2).as(paper.getTitle()).isZero();
                    assertThat(PdfText.of(PrintRun.of(TWO), page + 1, page + 1))
                            .contains(paper.getTitle(), "Job " + job.getTitle());
                }
            }
            assertThat(titles).containsExactly("SB-1032", "SB-1040");
            assertThat(run.getNumberOfPages() % 2).isZero();
        }
    }

    @Test
    void holdsEveryPageOnceAndBlankBacksBetween() throws IOException {
        int blanks =
                (int)
                        TWO.stream()
                                .flatMap(p -> p.papers().stream())
                                .filter(p -> p.pageCount() % 2 == 1)
                                .count();
        int pages = TWO.stream().mapToInt(Pack::pageCount).sum();

        try (PDDocument run = Loader.loadPDF(PrintRun.of(TWO))) {
            assertThat(run.getNumberOfPages()).isEqualTo(pages + blanks);
        }
    }

    @Test
    void givesTheSameBytesEachTime() {
        assertThat(PrintRun.of(TWO)).isEqualTo(PrintRun.of(TWO));
    }

    @Test
    void isNotMuchLargerThanItsPacks() {
        int packs = TWO.stream().mapToInt(p -> p.pdf().length).sum();

        assertThat(PrintRun.of(TWO).length).isLessThan(packs * 11 / 10);
    }

    @Test
    void withoutPacksIsOneBlankPage() throws IOException {
        try (PDDocument run = Loader.loadPDF(PrintRun.of(List.of()))) {
            assertThat(run.getNumberOfPages()).isEqualTo(1);
        }
    }
}
