package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** How papers stand that came back; common practice, no source. */
class ScanBookTest {
    private static final LocalDate LATER = Entries.DAY.plusYears(2);

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
        assertThat(only().blank()).containsOnlyKeys(2);
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
        book.enter(Entries.scan("1", Entries.page(1, "SB-1", 1, 1, 0)));
        // The papers of SB-1 hold no assignment.
        assertThat(lodging().awaited())
                .singleElement()
                .satisfies(
                        a -> {
                            assertThat(a.paper().job()).isEqualTo("SB-2");
                            assertThat(a.claim().reference()).isEqualTo("SB-2-STC");
                            assertThat(a.name()).isEqualTo("STC assignment");
                        });
        assertThat(lodging().ready()).isEmpty();
        assertThat(book.ofBatch("one")).hasSize(1);
    }

    @Test
    void whatTheNewestVersionTakesBackIsNotReadyUntilALaterOneDoesNot() {
        JobEntry job = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "504.00"));
        Entries.enter(ledger, Entries.batch("two", Entries.printing("stc", job)));
        book.enter(Entries.scan("1", new ScanEntry.Page(1, "SB-2", 1, "stc", 1, 1, 0)));
        assertThat(lodging().ready()).hasSize(1);

        JobEntry held = Entries.holding("stc", Entries.job("SB-2"));
        Entries.enter(ledger, Entries.batch("three", held));
        assertThat(lodging().ready()).isEmpty();
        PaperState taken = book.papers("SB-2").get(0);
        assertThat(book.papers("SB-2")).extracting(PaperState::kind).containsExactly("stc");
        assertThat(taken.takenBack()).contains("three");
        assertThat(taken.isReady()).isFalse();

        Entries.enter(
                ledger, Entries.batch("four", Entries.printing("warranty", Entries.job("SB-2"))));
        assertThat(book.papers("SB-2"))
                .filteredOn(paper -> paper.kind().equals("stc"))
                .allMatch(PaperState::isReady);
    }

    @Test
    void anAssignmentIsOfTheSchemeItWasPrintedForAndTheLatestCounts() {
        JobEntry both =
                Entries.job(
                        "SB-2",
                        Entries.claim(SchemeName.STC, "T-200", "504.00"),
                        Entries.claim(SchemeName.VEEC, "T-200", "20.00"));
        Entries.enter(ledger, Entries.batch("two", Entries.printing("stc", both)));
        Entries.enter(ledger, Entries.batch("three", Entries.printing("stc", both)));
        book.enter(Entries.scan("1", Entries.page(1, "SB-1", 1, 1, 0)));
        assertThat(lodging().awaited())
                .singleElement()
                .satisfies(
                        a -> {
                            assertThat(a.claim().reference()).isEqualTo("SB-2-STC");
                            assertThat(a.paper().version()).isEqualTo(2);
                            assertThat(a.paper().withdrawn()).isFalse();
                            assertThat(a.paper().step().awaited()).isEqualTo("not back yet");
                            assertThat(a.paper().step().words()).isEqualTo("printed");
                        });
    }

    @Test
    void ofAKindTheNewestPapersAreToldOfJobsThatAreNeitherCalledOffNorForgotten() {
        JobEntry[] jobs = new JobEntry[3];
        for (int i = 0; i < jobs.length; i++) {
            jobs[i] = Entries.printing("stc", Entries.job("SB-" + (i + 2)));
        }
        Entries.enter(ledger, Entries.batch("two", jobs));
        Entries.enter(ledger, Entries.batch("three", jobs[0]));
        assertThat(newest("stc")).containsExactly("SB-2 2 stc", "SB-3 1 stc", "SB-4 1 stc");
        assertThat(newest("warranty", "stc")).hasSize(4).contains("SB-1 1 warranty");
        assertThat(newest("veec")).isEmpty();

        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("SB-3", "called off")),
                        "",
                        "",
                        Entries.DAY,
                        Instant.EPOCH,
                        "test"));
        ledger.forget("SB-4", Entries.DAY, Instant.EPOCH, "test");
        assertThat(newest("stc")).containsExactly("SB-2 2 stc");
    }

    private List<String> newest(String... kinds) {
        return book.newest(List.of(kinds), LocalDate.EPOCH).stream()
                .map(p -> p.job() + " " + p.version() + " " + p.kind())
                .toList();
    }

    private Lodging lodging() {
        return Lodging.of(ledger, ledger.claims(LATER), Entries.DAY).orElseThrow();
    }

    @Test
    void anOfficeThatNeverScannedIsToldNothing() {
        assertThat(Lodging.of(ledger, ledger.claims(LATER), Entries.DAY)).isEmpty();
    }

    private void say(String sha256, Consumer<AdviceBook> words) {
        ledger.settle(
                Entries.advice(sha256),
                advice -> {
                    words.accept(advice);
                    return advice.name();
                });
    }

    private void told(AdviceBook advice, String key, AdviceStatus what) {
        ClaimState claim = advice.byReference("SB-2-STC").get(0);
        AdviceLine line = new AdviceLine(key, 1, Entries.DAY, Money.ZERO, "SB-2-STC");
        advice.match(advice.enter(line), line, claim, what, Money.ZERO, "test", "", "");
    }

    private static void lodgedByHand(AdviceBook advice) {
        ClaimState claim = advice.byReference("SB-2-STC").get(0);
        advice.byHand().say(claim, AdviceStatus.LODGED, Entries.DAY, Money.ZERO, Money.ZERO);
    }

    @Test
    void aClaimIsToBeLodgedUntilItIsAndAgainOnceThatIsUnsaidOrItFailed() {
        JobEntry job = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "504.00"));
        Entries.enter(ledger, Entries.batch("two", Entries.printing("stc", job)));
        book.enter(Entries.scan("1", Entries.page(1, "SB-1", 1, 1, 0)));
        assertThat(lodging().awaited()).hasSize(1);

        say("a", ScanBookTest::lodgedByHand);
        assertThat(lodging().awaited()).isEmpty();
        String said = ledger.records().all().get(ledger.records().all().size() - 1).name();
        say(
                "b",
                advice ->
                        advice.byHand()
                                .of(said)
                                .forEach(one -> advice.byHand().unsay(one, Entries.DAY)));
        assertThat(lodging().awaited()).hasSize(1);

        say("c", advice -> told(advice, "lodged", AdviceStatus.LODGED));
        assertThat(lodging().awaited()).isEmpty();
        say("d", advice -> told(advice, "failed", AdviceStatus.FAILED));
        assertThat(lodging().awaited()).hasSize(1);
        say("e", ScanBookTest::lodgedByHand);
        assertThat(lodging().awaited()).isEmpty();
    }

    @Test
    @Tag("slow")
    void ofMoreClaimsThanOneQuestionTakesEachHasItsPaper() {
        JobEntry[] jobs = new JobEntry[1100];
        for (int i = 0; i < jobs.length; i++) {
            ClaimEntry claim = Entries.claim(SchemeName.STC, "T-" + (1000 + i), "504.00");
            jobs[i] = Entries.printing("stc", Entries.job("M-" + i, claim));
        }
        Entries.enter(ledger, Entries.batch("many", jobs));
        book.enter(Entries.scan("1", Entries.page(1, "SB-1", 1, 1, 0)));
        assertThat(lodging().awaited())
                .hasSize(jobs.length)
                .allMatch(a -> a.paper().job().equals(a.claim().job()));
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
