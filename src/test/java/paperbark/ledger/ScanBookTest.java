package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.SchemeName;

/** How papers stand that came back; common practice, no source. */
class ScanBookTest {
    @TempDir private Path folder;

    private Ledger ledger;
    private ScanBook book;

    @BeforeEach
    void open() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
        book = new ScanBook(ledger);
        Entries.enter(
                ledger,
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
    }

    @AfterEach
    void close() {
        ledger.verify();
        ledger.close();
    }

    private PaperState only() {
        List<PaperState> papers = book.papers("sb-1");
        assertThat(papers).hasSize(1);
        return papers.get(0);
    }

    @Test
    void aPaperIsPrintedThenIncompleteThenBack() {
        assertThat(only().step()).isEqualTo(PaperState.Step.PRINTED);
        book.enter(Entries.scan("1", Entries.page(4, "SB-1", 1, 2, 0)));
        assertThat(only().step()).isEqualTo(PaperState.Step.INCOMPLETE);
        book.enter(Entries.scan("2", Entries.page(1, "SB-1", 1, 1, -1)));
        assertThat(only().step()).isEqualTo(PaperState.Step.BACK);
        assertThat(only().lastCame()).contains(Entries.DAY.plusDays(3));
        assertThat(book.times("2")).isOne();
        assertThat(book.times("3")).isZero();
    }

    @Test
    void anEmptyBoxIsToldUntilThePageComesAgainWithoutOne() {
        book.enter(
                Entries.scan(
                        "1", Entries.page(1, "SB-1", 1, 1, 0), Entries.page(2, "SB-1", 1, 2, 1)));
        assertThat(only().step()).isEqualTo(PaperState.Step.BLANK_BOX);
        assertThat(only().blank()).containsExactly(2);
        book.enter(Entries.scan("2", Entries.page(1, "SB-1", 1, 2, 0)));
        assertThat(only().step()).isEqualTo(PaperState.Step.BACK);
    }

    @Test
    void theVersionThatIsReplacedOrWithdrawnSaysSo() {
        Entries.enter(
                ledger,
                Entries.batch(
                        "two",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-101", "504.00"))));
        assertThat(book.papers("SB-1"))
                .extracting(PaperState::version, PaperState::replaced)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(2, false),
                        org.assertj.core.groups.Tuple.tuple(1, true));
        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("SB-1", "called off")),
                        "",
                        "",
                        Entries.DAY,
                        Instant.EPOCH,
                        "test"));
        assertThat(book.papers("SB-1")).allMatch(PaperState::withdrawn);
    }

    @Test
    void anOpenClaimHasItsNewestPaper() {
        JobEntry job = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "504.00"));
        Entries.enter(ledger, Entries.batch("two", Entries.printing("stc", job)));
        assertThat(book.ofOpenClaims(SchemeName.STC))
                .singleElement()
                .satisfies(p -> assertThat(p.job()).isEqualTo("SB-2"));
        assertThat(book.ofOpenClaims(SchemeName.VEEC)).isEmpty();
        assertThat(book.newest("SB-2", SchemeName.STC)).isPresent();
        assertThat(book.newest("SB-1", SchemeName.STC)).isEmpty();
        assertThat(book.ofBatch("one")).hasSize(1);
    }

    @Test
    void aLedgerMadeAnewHasTheScansToo() {
        book.enter(Entries.scan("1", Entries.page(1, "SB-1", 1, 1, 0)));
        LedgerPlace other = new LedgerPlace.InFile(folder.resolve("other.db"));
        Ledger.rebuild(other, ledger.id(), ledger.records().all());
        try (Ledger anew = Ledger.open(other)) {
            assertThat(new ScanBook(anew).papers("SB-1").get(0).back()).containsExactly(1);
        }
    }
}
