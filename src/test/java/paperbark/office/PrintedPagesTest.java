package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.PageMap;
import paperbark.finding.Finding;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.ScanBook;
import paperbark.output.PageMark;
import paperbark.output.paper.SignBox;
import paperbark.scan.PrintedPage;
import paperbark.scan.ReturnedPaper;
import paperbark.scan.SeenPage;

/** Which printed paper a page is of: by its mark, by its file's name, or by the pages around it. */
class PrintedPagesTest {
    /** Pages 1 and 2, and 4 to 6 of a pack; 3 is a blank back. 7 is the owner's copy. */
    private static final List<PageMap.PaperSpan> PACK =
            List.of(
                    span("stc", "STC assignment", false, 1, 2),
                    span("warranty", "Warranty registration", false, 4, 3),
                    span("stc", "STC assignment", true, 7, 1));

    @TempDir private Path folder;

    private Office office;
    private Ledger ledger;

    @BeforeEach
    void aJobThatWasPrintedTwice() throws IOException {
        office = Office.in(folder);
        Ledger.create(office.ledger(), Instant.EPOCH);
        ledger = Ledger.open(office.ledger());
        print("one");
        print("two");
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static PageMap.PaperSpan span(
            String kind, String title, boolean copy, int first, int pages) {
        return new PageMap.PaperSpan(kind, title, copy, true, first, pages, false, List.of());
    }

    private void print(String batch) throws IOException {
        Entries.enter(ledger, Entries.batch(batch, Entries.job("SB-1")));
        PageMap map = new PageMap(batch, List.of(new PageMap.PackPages("SB-1", PACK)));
        Path there = Files.createDirectories(office.packs().resolve(batch));
        Files.write(there.resolve(PageMap.FILE), new ObjectMapper().writeValueAsBytes(map));
    }

    private PrintedPages printed() throws IOException {
        return new PrintedPages(ledger, office);
    }

    private static SeenPage seen(int number, Optional<PrintedPage> place) {
        return new SeenPage(number, false, place, "No mark was found.", 0, true, List.of());
    }

    private static SeenPage empty(int number) {
        return new SeenPage(number, true, Optional.empty(), "", 0, false, List.of());
    }

    private Optional<PrintedPage> at(int packPage) throws IOException {
        PrintedPage any = printed().newest("SB-1", "stc").orElseThrow();
        return printed().at(any, packPage);
    }

    @Test
    void aMarkTellsBatchPaperAndPage() throws IOException {
        assertThat(printed().of(PageMark.of("SB-1", "warranty", 5, "one")))
                .singleElement()
                .satisfies(
                        place -> {
                            assertThat(place.batch()).isEqualTo("one");
                            assertThat(place.version()).isOne();
                            assertThat(place.page()).isEqualTo(2);
                            assertThat(place.paper().kind()).isEqualTo("warranty");
                        });
        assertThat(printed().of(PageMark.of("sb-1", "warranty", 5, "one"))).isEmpty();
        assertThat(printed().of(PageMark.of("SB-1", "stc", 5, "one"))).isEmpty();
        assertThat(printed().of(PageMark.of("SB-1", "warranty", 3, "one"))).isEmpty();
        assertThat(printed().of(PageMark.of("SB-1", "warranty", 5, "three"))).isEmpty();
        assertThat(printed().of(new PageMark("SB-1", "warranty", 5, Optional.empty()))).isEmpty();
    }

    @Test
    void theNewestPaperOfAKindIsNoCopyAndOfTheNewestBatchThatHasIt() throws IOException {
        PrintedPage newest = printed().newest("sb-1", "stc").orElseThrow();
        assertThat(newest.batch()).isEqualTo("two");
        assertThat(newest.packPage()).isOne();
        assertThat(printed().newest("SB-1", "handover")).isEmpty();
        assertThat(printed().newest("SB-2", "stc")).isEmpty();
        Files.delete(office.packs().resolve("two").resolve(PageMap.FILE));
        assertThat(printed().newest("SB-1", "stc").orElseThrow().batch()).isEqualTo("one");
    }

    @Test
    void aBlankBackBelongsToNoPaper() throws IOException {
        assertThat(at(2).orElseThrow().page()).isEqualTo(2);
        assertThat(at(3)).isEmpty();
        assertThat(at(6).orElseThrow().paper().kind()).isEqualTo("warranty");
    }

    @Test
    void openPagesAreGuessedWhereJustSoManyLieBetweenTwoOfOnePack() throws IOException {
        List<SeenPage> pages =
                List.of(
                        seen(1, at(2)),
                        empty(2),
                        seen(3, Optional.empty()),
                        seen(4, Optional.empty()),
                        seen(5, at(6)));
        assertThat(places(pages)).containsOnly(Map.entry(3, 4), Map.entry(4, 5));
        assertThat(places(pages.subList(0, 4))).isEmpty();
        assertThat(places(pages.subList(1, 5))).isEmpty();
        assertThat(places(List.of(pages.get(0), pages.get(2), pages.get(4)))).isEmpty();
    }

    @Test
    void betweenTwoBatchesNothingIsGuessed() throws IOException {
        PrintedPage first = printed().of(PageMark.of("SB-1", "stc", 2, "one")).get(0);
        List<SeenPage> pages =
                List.of(
                        seen(1, Optional.of(first)),
                        seen(2, Optional.empty()),
                        seen(3, Optional.empty()),
                        seen(4, at(6)));
        assertThat(places(pages)).isEmpty();
    }

    private Map<Integer, Integer> places(List<SeenPage> pages) throws IOException {
        Map<Integer, Integer> places = new TreeMap<>();
        Between.of(pages, printed()).forEach((page, place) -> places.put(page, place.packPage()));
        return places;
    }

    private List<Integer> named(String file, SeenPage... pages) throws IOException {
        return NamedPages.placed(Path.of(file), List.of(pages), printed()).stream()
                .map(page -> page.place().map(PrintedPage::packPage).orElse(0))
                .toList();
    }

    @Test
    void aFilesNameTellsThePageOrAllOfThem() throws IOException {
        SeenPage open = seen(1, Optional.empty());
        assertThat(named("SB-1 warranty 2.pdf", open)).containsExactly(5);
        assertThat(named("SB-1_warranty_3.pdf", empty(1), open)).containsExactly(0, 6);
        assertThat(named("SB-1 warranty 2 (1).pdf", open)).containsExactly(5);
        assertThat(named("SB-1 warranty.pdf", open, open, open)).containsExactly(4, 5, 6);
        assertThat(named("SB-1 warranty.pdf", open, open)).containsExactly(0, 0);
        assertThat(named("SB-1 warranty 4.pdf", open)).containsExactly(0);
        assertThat(named("SB-1 warranty 2.pdf", open, open)).containsExactly(0, 0);
        assertThat(named("SB-9 warranty 2.pdf", open)).containsExactly(0);
        assertThat(named("pile.pdf", open)).containsExactly(0);
        assertThat(named(NamedPages.name("SB-1", "stc", 2), open)).containsExactly(2);
        assertThat(named("SB-1 warranty 2.pdf", seen(1, at(1)), open)).containsExactly(1, 5);
    }

    private List<Finding> findings(ReturnedPaper paper) throws IOException {
        ScanFindings findings = new ScanFindings("pile.pdf", new ScanBook(ledger));
        findings.of(paper);
        return findings.all();
    }

    @Test
    void anEmptyBoxIsNamedByWhoWritesWhatInIt() throws IOException {
        PageMap.PaperSpan span = PACK.get(1);
        SeenPage.BlankBox box =
                new SeenPage.BlankBox(
                        new SignBox(5, "Owner", "Signature", 1, 1, 1, 1), new byte[0]);
        SeenPage page =
                new SeenPage(
                        1,
                        false,
                        Optional.of(new PrintedPage("SB-1", 2, "two", span, 5)),
                        "",
                        0,
                        true,
                        List.of(box));
        assertThat(findings(new ReturnedPaper("SB-1", 2, "two", span, List.of(page))))
                .extracting(Finding::fact)
                .contains(
                        "Warranty registration of job SB-1, page 2: nothing seems to be written in"
                                + " Owner, Signature.");
    }
}
