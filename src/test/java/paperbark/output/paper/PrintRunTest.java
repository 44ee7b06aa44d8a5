package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionGoTo;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.CaseFiles;

class PrintRunTest {
    private static final Packs PACKS = new Packs(Optional.empty());
    private static final List<Pack> TWO =
            List.of(
                    PACKS.make(CaseFiles.installedSolar(), List.of()),
                    PACKS.make(CaseFiles.bookedHeatPump(), List.of()));

    private static final Set<String> SHARING =
            Set.of("Entitlement working", "Old-heater record", "Statement of benefit");

    @TempDir private Path folder;

    @Test
    void beginsEveryPaperOnAFreshSheetUnlessTheSamePeopleKeepItWithTheOneBefore()
            throws IOException {
        try (PDDocument run = Loader.loadPDF(PrintRuns.of(folder, TWO))) {
            List<String> titles = new ArrayList<>();
            PDOutlineItem crew = run.getDocumentCatalog().getDocumentOutline().getFirstChild();
            assertThat(crew.getTitle()).isEqualTo("Crew Heron");
            for (PDOutlineItem job : crew.children()) {
                titles.add(job.getTitle());
                for (PDOutlineItem paper : job.children()) {
                    int page = ((PDPageDestination) paper.getDestination()).retrievePageNumber();
                    if (!SHARING.contains(paper.getTitle())) {
                        assertThat(page % 2).as(paper.getTitle()).isZero();
                    }
                    assertThat(PdfText.of(PrintRuns.of(folder, TWO), page + 1, page + 1))
                            .contains(paper.getTitle(), "Job " + job.getTitle());
                }
            }
            assertThat(titles).containsExactly("SB-1032", "SB-1040");
            assertThat(run.getNumberOfPages() % 2).isZero();
        }
    }

    @Test
    void holdsThePacksPageByPageAndABlankBackAfterAnOddOne() throws IOException {
        int page = 1;
        byte[] run = PrintRuns.of(folder, TWO);
        for (Pack pack : TWO) {
            for (int own = 1; own <= PdfText.pages(pack); own++) {
                String text = PdfText.of(pack.pdf(), own, own).strip();
                String place = own == 1 ? " Job " + (TWO.indexOf(pack) + 1) + " of 2" : "";
                assertThat(PdfText.of(run, page, page).strip()).isEqualTo(text + place);
                page++;
            }
            if (page % 2 == 0) {
                assertThat(PdfText.of(run, page, page)).isBlank();
                page++;
            }
        }
        try (PDDocument document = Loader.loadPDF(run)) {
            assertThat(document.getNumberOfPages()).isEqualTo(page - 1);
        }
    }

    @Test
    void leadsEveryLinkToThePageOfItsOwnPack() throws IOException {
        try (PDDocument run = Loader.loadPDF(PrintRuns.of(folder, TWO))) {
            int links = 0;
            int first = 0;
            for (Pack pack : TWO) {
                for (PDAnnotation link : run.getPage(first).getAnnotations()) {
                    PDPageDestination there =
                            (PDPageDestination) ((PDAnnotationLink) link).getDestination();
                    PDActionGoTo step = (PDActionGoTo) ((PDAnnotationLink) link).getAction();
                    there = there == null ? (PDPageDestination) step.getDestination() : there;
                    int page = there.retrievePageNumber() - first + 1;
                    assertThat(link.getContents()).startsWith("To page " + page);
                    links++;
                }
                first += PdfText.pages(pack) + PdfText.pages(pack) % 2;
            }
            assertThat(links).isGreaterThan(10);
        }
    }

    @Test
    void leadsFromEveryPageAndLinkToItsElements() throws IOException {
        try (PDDocument run = Loader.loadPDF(PrintRuns.of(folder, TWO))) {
            Map<Integer, COSBase> parents = new HashMap<>();
            COSDictionary root = run.getDocumentCatalog().getStructureTreeRoot().getCOSObject();
            for (COSBase kid :
                    root.getCOSDictionary(COSName.PARENT_TREE).getCOSArray(COSName.KIDS)) {
                COSArray pairs =
                        ((COSDictionary) ((COSObject) kid).getObject()).getCOSArray(COSName.NUMS);
                for (int i = 0; i < pairs.size(); i += 2) {
                    assertThat(parents.put(pairs.getInt(i), pairs.getObject(i + 1))).isNull();
                }
            }
            for (PDPage page : run.getPages()) {
                if (page.getStructParents() >= 0) {
                    for (COSBase element :
                            ((COSArray) parents.remove(page.getStructParents())).toList()) {
                        assertThat(
                                        ((COSDictionary) ((COSObject) element).getObject())
                                                .getCOSDictionary(COSName.PG))
                                .isSameAs(page.getCOSObject());
                    }
                }
                for (PDAnnotation link : page.getAnnotations()) {
                    COSDictionary element = (COSDictionary) parents.remove(link.getStructParent());
                    assertThat(element.getNameAsString(COSName.S)).isEqualTo("Link");
                }
            }
            assertThat(parents).isEmpty();
        }
    }

    @Test
    void marksAtTheEdgeWhereAJobBeginsAStepLowerEachTime() throws IOException {
        try (PDDocument run = Loader.loadPDF(PrintRuns.of(folder, TWO))) {
            int second = PdfText.pages(TWO.get(0)) + PdfText.pages(TWO.get(0)) % 2;
            PDFRenderer pictures = new PDFRenderer(run);

            List<Integer> first = black(pictures.renderImage(0));
            List<Integer> lower = black(pictures.renderImage(second));
            assertThat(first).isNotEmpty();
            assertThat(lower).isNotEmpty();
            assertThat(lower.get(0)).isGreaterThan(first.get(first.size() - 1));
            assertThat(black(pictures.renderImage(1))).isEmpty();
        }
    }

    /** The rows whose last pixels are black. */
    private static List<Integer> black(BufferedImage page) {
        return IntStream.range(0, page.getHeight())
                .filter(y -> (page.getRGB(page.getWidth() - 2, y) & 0xFF) < 60)
                .boxed()
                .toList();
    }

    @Test
    void givesTheSameBytesEachTime() throws IOException {
        assertThat(PrintRuns.of(folder, TWO)).isEqualTo(PrintRuns.of(folder, TWO));
    }

    @Test
    void isNotMuchLargerThanItsPacks() throws IOException {
        int packs = TWO.stream().mapToInt(p -> p.pdf().length).sum();

        assertThat(PrintRuns.of(folder, TWO).length).isLessThan(packs * 11 / 10);
    }

    @Test
    void withoutPacksIsOneBlankPage() throws IOException {
        try (PDDocument run = Loader.loadPDF(PrintRuns.of(folder, List.of()))) {
            assertThat(run.getNumberOfPages()).isEqualTo(1);
        }
    }
}
