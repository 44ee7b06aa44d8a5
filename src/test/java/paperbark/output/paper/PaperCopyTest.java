package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import paperbark.batch.PageMap;
import paperbark.batch.SampleWeek;

/** One paper cut out of a pack: whole, sound, and with nothing of its neighbours. */
class PaperCopyTest {
    private static Path batch;

    @BeforeAll
    static void prepare() throws IOException {
        batch = SampleWeek.published();
    }

    private static Path pack(String job) {
        return batch.resolve("packs/" + job + ".pdf");
    }

    private static List<PageMap.PaperSpan> papers(String job) throws IOException {
        return PageMap.in(batch).orElseThrow().of(job).orElseThrow().papers();
    }

    private static String text(PDDocument document, int from, int to) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(from);
        stripper.setEndPage(to);
        return stripper.getText(document);
    }

    @Test
    void everyPaperSaysWhatItSaysInThePackAndConforms() throws IOException {
        try (PDDocument pack = Loader.loadPDF(pack("SB-1102").toFile())) {
            for (PageMap.PaperSpan paper : papers("SB-1102")) {
                byte[] copy = PaperCopy.of(pack("SB-1102"), paper.first(), paper.pages());

                assertThat(copy)
                        .isEqualTo(PaperCopy.of(pack("SB-1102"), paper.first(), paper.pages()));
                assertThat(Judge.of(copy)).as(paper.title()).isEqualTo(Judge.Verdict.CONFORMS);
                try (PDDocument read = Loader.loadPDF(copy)) {
                    assertThat(read.getNumberOfPages()).isEqualTo(paper.pages());
                    assertThat(text(read, 1, paper.pages()))
                            .isEqualTo(
                                    text(pack, paper.first(), paper.first() + paper.pages() - 1));
                }
            }
        }
    }

    /** The pages, tags and bookmarks of the other papers are not even in the file. */
    @Test
    void nothingOfTheOthersIsLeft() throws IOException {
        for (PageMap.PaperSpan paper : papers("SB-1102")) {
            byte[] copy = PaperCopy.of(pack("SB-1102"), paper.first(), paper.pages());
            assertThat(copy.length).isLessThan((int) Files.size(pack("SB-1102")));
            try (PDDocument read = Loader.loadPDF(copy)) {
                List<COSDictionary> pages = new ArrayList<>();
                read.getPages().forEach(p -> pages.add(p.getCOSObject()));
                COSDocument all = read.getDocument();
                for (COSObjectKey key : all.getXrefTable().keySet()) {
                    if (all.getObjectFromPool(key).getObject() instanceof COSDictionary found) {
                        if (COSName.PAGE.equals(found.getItem(COSName.TYPE))) {
                            assertThat(pages).as(paper.title()).contains(found);
                        }
                        COSDictionary on = found.getCOSDictionary(COSName.PG);
                        assertThat(on == null || pages.contains(on)).as(paper.title()).isTrue();
                        assertThat(
                                        found.containsKey(COSName.TITLE)
                                                && found.containsKey(COSName.PARENT))
                                .as("bookmarks of " + paper.title())
                                .isFalse();
                    }
                }
            }
        }
    }

    @Test
    void theWholePackHoldsWhatTheCopiesDoNot() throws IOException {
        Path pack = pack("SB-1102");
        try (PDDocument read = Loader.loadPDF(pack.toFile())) {
            byte[] whole = PaperCopy.of(pack, 1, read.getNumberOfPages());
            assertThat(Judge.of(whole)).isEqualTo(Judge.Verdict.CONFORMS);
            assertThat(PaperCopy.shows(whole, Set.of("00001102"))).isTrue();
        }
        for (String kind : List.of("handover", "benefit", "warranty", "working")) {
            PageMap.PaperSpan paper = span(kind);
            byte[] copy = PaperCopy.of(pack, paper.first(), paper.pages());
            assertThat(PaperCopy.shows(copy, Set.of("00001102"))).as(kind).isFalse();
        }
    }

    private static PageMap.PaperSpan span(String kind) throws IOException {
        return papers("SB-1102").stream()
                .filter(p -> p.kind().equals(kind))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void pagesThatAreNotThereAreRefused() {
        assertThatThrownBy(() -> PaperCopy.of(pack("SB-1102"), 40, 2))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("no such pages");
        assertThatThrownBy(() -> PaperCopy.of(pack("SB-1102"), 0, 1))
                .isInstanceOf(IOException.class);
    }

    @Test
    void numbersAreSeenHoweverTheyAreGrouped() throws IOException {
        PageMap.PaperSpan paper = span("stc");
        byte[] stc = PaperCopy.of(pack("SB-1102"), paper.first(), paper.pages());
        assertThat(PaperCopy.shows(stc, Set.of("00001102"))).isTrue();
        assertThat(PaperCopy.shows(stc, Set.of("87654321999"))).isFalse();
        // Too short to tell anything.
        assertThat(PaperCopy.shows(stc, Set.of("1"))).isFalse();
    }
}
