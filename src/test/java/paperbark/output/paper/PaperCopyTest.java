package paperbark.output.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSString;
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

    /** The pages, names and tags of the other papers are not even in the file. */
    @Test
    void nothingOfTheOthersIsLeft() throws IOException {
        for (PageMap.PaperSpan paper : papers("SB-1102")) {
            byte[] copy = PaperCopy.of(pack("SB-1102"), paper.first(), paper.pages());
            try (PDDocument read = Loader.loadPDF(copy)) {
                COSDocument all = read.getDocument();
                int pages = 0;
                for (COSObjectKey key : all.getXrefTable().keySet()) {
                    COSObject object = all.getObjectFromPool(key);
                    if (object.getObject() instanceof COSDictionary found) {
                        pages += COSName.PAGE.equals(found.getItem(COSName.TYPE)) ? 1 : 0;
                        assertThat(strings(found))
                                .as(paper.title())
                                .noneMatch(s -> others(paper).stream().anyMatch(s::contains));
                    }
                }
                assertThat(pages).as(paper.title()).isEqualTo(paper.pages());
            }
        }
    }

    private static List<String> others(PageMap.PaperSpan paper) {
        try {
            return papers("SB-1102").stream()
                    .filter(p -> !p.kind().equals(paper.kind()))
                    .map(PageMap.PaperSpan::title)
                    .filter(title -> !paper.title().contains(title))
                    .toList();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** Texts of a dictionary itself; references are gone through on their own. */
    private static List<String> strings(COSDictionary found) {
        return found.getValues().stream().flatMap(v -> strings(v).stream()).toList();
    }

    private static List<String> strings(COSBase value) {
        if (value instanceof COSString text) {
            return List.of(text.getString());
        }
        if (value instanceof COSArray array) {
            return array.toList().stream().flatMap(v -> strings(v).stream()).toList();
        }
        return value instanceof COSDictionary inner ? strings(inner) : List.of();
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
        byte[] stc =
                papers("SB-1102").stream()
                        .filter(p -> p.kind().equals("stc"))
                        .findFirst()
                        .map(
                                p -> {
                                    try {
                                        return PaperCopy.of(pack("SB-1102"), p.first(), p.pages());
                                    } catch (IOException e) {
                                        throw new AssertionError(e);
                                    }
                                })
                        .orElseThrow();
        assertThat(PaperCopy.shows(stc, Set.of("00001102"))).isTrue();
        assertThat(PaperCopy.shows(stc, Set.of("87654321999"))).isFalse();
        // Too short to tell anything.
        assertThat(PaperCopy.shows(stc, Set.of("1"))).isFalse();
    }
}
