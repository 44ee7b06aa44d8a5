package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.batch.PageMap;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.ScanBook;
import paperbark.ledger.ScanEntry;
import paperbark.ledger.WithdrawalEntry;
import paperbark.scan.PrintedPage;
import paperbark.scan.ReturnedPaper;
import paperbark.scan.SeenPage;

/** What is said of papers that came back, by what came of them before. */
class ScanFindingsTest {
    @TempDir private Path folder;

    private Office office;
    private Ledger ledger;

    @BeforeEach
    void aJobWhoseWarrantyWasPrinted() throws IOException {
        office = Office.in(folder);
        Ledger.create(office.ledger(), Instant.EPOCH);
        ledger = Ledger.open(office.ledger());
        Entries.enter(ledger, Entries.batch("one", Entries.job("SB-1")));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static ReturnedPaper paper(boolean signed, int... pages) {
        PageMap.PaperSpan span =
                new PageMap.PaperSpan(
                        "warranty", "Warranty registration", false, signed, 5, 3, false, List.of());
        return new ReturnedPaper(
                "SB-1",
                1,
                "one",
                span,
                IntStream.of(pages)
                        .mapToObj(
                                page ->
                                        new SeenPage(
                                                page,
                                                false,
                                                Optional.of(
                                                        new PrintedPage(
                                                                "SB-1", 1, "one", span, page + 4)),
                                                "",
                                                0,
                                                true,
                                                List.of()))
                        .toList());
    }

    private ScanFindings findings() throws IOException {
        return new ScanFindings("pile.pdf", new ScanBook(ledger));
    }

    private List<Finding> of(ReturnedPaper paper) throws IOException {
        ScanFindings findings = findings();
        findings.of(paper);
        return findings.all();
    }

    @Test
    void aWholePaperIsNothingToSay() throws IOException {
        assertThat(of(paper(true, 1, 2, 3))).isEmpty();
    }

    @Test
    void pagesThatDidNotComeAreNamed() throws IOException {
        assertThat(of(paper(true, 2)))
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.PAPER_INCOMPLETE);
                            assertThat(f.fact())
                                    .isEqualTo(
                                            "Warranty registration of job SB-1: pages 1, 3 of 3 did not come.");
                            assertThat(f.job()).contains("SB-1");
                        });
        assertThat(of(paper(true, 1, 3)).get(0).fact()).contains(": page 2 of 3 did");
        assertThat(of(paper(false, 2))).isEmpty();
    }

    @Test
    void whatCameInAnEarlierPileIsNotMissed() throws IOException {
        new ScanBook(ledger)
                .enter(
                        Entries.scan(
                                "1",
                                Entries.page(1, "SB-1", 1, 1, 0),
                                Entries.page(2, "SB-1", 1, 2, 0)));
        assertThat(of(paper(true, 3))).isEmpty();
        assertThat(of(paper(true, 2, 3)))
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.PAGE_TWICE);
                            assertThat(f.fact()).contains(": page 2 came more than once");
                            assertThat(f.job()).contains("SB-1");
                        });
    }

    @Test
    void aPageThatIsTwiceInThePileIsNamedOnce() throws IOException {
        assertThat(of(paper(true, 1, 2, 3, 2, 2, 1)))
                .singleElement()
                .satisfies(f -> assertThat(f.fact()).contains(": pages 1, 2 came more than once"));
    }

    @Test
    void aPaperThatALaterBatchPrintedAnewCountsNoLonger() throws IOException {
        Entries.enter(ledger, Entries.batch("two", Entries.job("SB-1")));
        assertThat(of(paper(true, 1, 2, 3)))
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.PAPER_OUTDATED);
                            assertThat(f.fact())
                                    .contains("is of batch one, and a later batch printed it anew");
                        });
    }

    @Test
    void aPaperOfAJobThatWasCalledOffIsKept() throws IOException {
        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("SB-1", "called off")),
                        "",
                        "",
                        Entries.DAY,
                        Instant.EPOCH,
                        "test"));
        // That pages did not come is not said of it, as nothing of it is wanted.
        assertThat(of(paper(true, 1)))
                .singleElement()
                .satisfies(
                        f ->
                                assertThat(f.fact())
                                        .endsWith("the job was called off or replaced since."));
    }

    @Test
    void aPageThatNobodyCanPlaceIsToldWithWhatItMayBe() throws IOException {
        SeenPage page =
                new SeenPage(4, false, Optional.empty(), "No mark was found.", 0, false, List.of());
        ScanFindings findings = findings();
        findings.unplaced(page, "page-7.pdf", Optional.empty());
        findings.unplaced(page, "page-8.pdf", paper(true, 2).pages().get(0).place());
        assertThat(findings.all())
                .extracting(Finding::fact)
                .containsExactly(
                        "Page 4 belongs to no paper for certain. No mark was found.",
                        "Page 4 belongs to no paper for certain. No mark was found. By the pages around"
                                + " it, it may be page 2 of the Warranty registration of job SB-1.");
        assertThat(findings.all().get(0).remedy()).contains("signed/to-place/page-7.pdf");
    }

    @Test
    void oneOfAThingIsNotSeveral() {
        assertThat(new SortedPile(List.of(paper(true, 1)), List.of(), 0, 0, 0, List.of()).said())
                .isEqualTo("0 pages of 1 paper sorted into signed/. 0 findings.");
        assertThat(new SortedPile(List.of(), entered(1), 0, 2, 3, List.of()).said())
                .isEqualTo(
                        "1 page of 0 papers sorted into signed/, 3 empty, 2 to be placed by a person."
                                + " 0 findings.");
    }

    private static List<ScanEntry.Page> entered(int howMany) {
        return IntStream.range(0, howMany).mapToObj(i -> Entries.page(1, "SB-1", 1, 1, 0)).toList();
    }
}
