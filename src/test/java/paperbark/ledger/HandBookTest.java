package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What a person says of a claim, beside what an advice says of it, and that it can be unsaid. */
class HandBookTest {
    private static final Money ALL = Money.of("504.00");
    private static final Money PART = Money.of("100.00");
    private static final LocalDate DAY = Entries.DAY.plusDays(10);

    @TempDir private Path folder;

    private Ledger ledger;
    private String entry = "";

    @BeforeEach
    void aLedgerWithAClaim() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
        ClaimEntry claim = Entries.claim(SchemeName.STC, "T-100", "504.00");
        Entries.enter(ledger, Entries.batch("one", Entries.job("T-1", claim), Entries.held("T-2")));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private <T> T settle(Function<AdviceBook, T> work) {
        return ledger.settle(
                Entries.advice("33"),
                book -> {
                    T result = work.apply(book);
                    entry = book.name().orElse("");
                    return result;
                });
    }

    private static ClaimState claim(AdviceBook book) {
        return book.byReference("T-1-STC").get(0);
    }

    private ClaimState said(AdviceStatus what, LocalDate day, Money amount) {
        return settle(book -> book.byHand().say(claim(book), what, day, amount, amount));
    }

    private void told(LocalDate day, Money amount) {
        settle(
                book -> {
                    AdviceLine line = new AdviceLine("k", 2, day, amount, "T-1-STC");
                    return book.match(
                            book.enter(line),
                            line,
                            claim(book),
                            AdviceStatus.PAID,
                            amount,
                            "reference",
                            "",
                            "");
                });
    }

    private List<LocalDate> paid(Money amount) {
        return settle(book -> book.byHand().paid(claim(book), amount, amount));
    }

    private List<LocalDate> toldPaid(Money amount) {
        return settle(book -> book.byHand().toldPaid(claim(book), amount, amount));
    }

    private Optional<JobOutcome> outcome(String job) {
        return settle(book -> book.byHand().outcome(job));
    }

    private List<HandBook.Said> of(String name) {
        return settle(book -> book.byHand().of(name));
    }

    private ClaimState unsay(String name) {
        HandBook.Said said = of(name).get(0);
        return settle(book -> book.byHand().unsay(said, DAY.plusDays(1)));
    }

    @Test
    void aPaymentThatIsSaidCountsAndItsEntryTellsIt() {
        ClaimState paid = said(AdviceStatus.PAID, DAY, PART);
        assertThat(paid.received()).isEqualTo(PART);
        assertThat(paid.paidOn()).contains(DAY);
        assertThat(paid.balance()).isEqualTo("$404.00 still to come");
        assertThat(paid.isOpen()).isTrue();

        assertThat(entry).isEqualTo("advice-2");
        assertThat(of("advice-2"))
                .containsExactly(new HandBook.Said(1, paid.id(), AdviceStatus.PAID, false));
        assertThat(of("one")).isEmpty();
    }

    @Test
    void whatIsPaidBeyondWhatWasExpectedIsNotStillToCome() {
        assertThat(said(AdviceStatus.PAID, DAY, ALL).balance()).isEqualTo("$0.00 still to come");
        ClaimState more = said(AdviceStatus.PAID, DAY, PART);
        assertThat(more.balance()).isEqualTo("$100.00 more than expected");
        assertThat(more.outstanding()).isEqualTo(Money.ZERO);
        assertThat(more.isOpen()).isFalse();
    }

    @Test
    void whatAnAdviceToldWasNotSaidByHand() {
        told(DAY, ALL);
        assertThat(of("advice-2")).isEmpty();
        assertThat(paid(ALL)).isEmpty();
        assertThat(toldPaid(ALL)).containsExactly(DAY);
    }

    @Test
    void paymentsOfExactlyThatMuchAreFoundInTheOrderInWhichTheyWereEntered() {
        said(AdviceStatus.PAID, DAY, PART);
        told(DAY.minusDays(2), PART);
        said(AdviceStatus.PAID, DAY.minusDays(1), PART);
        said(AdviceStatus.LODGED, DAY, Money.ZERO);
        assertThat(paid(PART)).containsExactly(DAY, DAY.minusDays(1));
        assertThat(toldPaid(PART)).containsExactly(DAY, DAY.minusDays(2), DAY.minusDays(1));
        assertThat(toldPaid(ALL)).isEmpty();
        assertThat(toldPaid(Money.ZERO)).isEmpty();
    }

    @Test
    void aDayIsNearUntilTheLastDayOnEitherSide() {
        said(AdviceStatus.PAID, DAY, PART);
        settle(
                book -> {
                    HandBook hand = book.byHand();
                    ClaimState claim = claim(book);
                    assertThat(hand.saidNear(claim, PART, PART, DAY.plusDays(5), 5)).isTrue();
                    assertThat(hand.saidNear(claim, PART, PART, DAY.minusDays(5), 5)).isTrue();
                    assertThat(hand.saidNear(claim, PART, PART, DAY.plusDays(6), 5)).isFalse();
                    assertThat(hand.saidNear(claim, PART, PART, DAY.minusDays(6), 5)).isFalse();
                    assertThat(hand.saidNear(claim, ALL, ALL, DAY, 5)).isFalse();
                    return null;
                });
    }

    @Test
    void whatIsUnsaidCountsNoLongerAndItsEntryTellsThat() {
        ClaimState before = said(AdviceStatus.PAID, DAY, PART);
        ClaimState after = unsay("advice-2");
        assertThat(after.id()).isEqualTo(before.id());
        assertThat(after.received()).isEqualTo(Money.ZERO);
        assertThat(after.paidOn()).isEmpty();
        assertThat(of("advice-2"))
                .containsExactly(new HandBook.Said(1, before.id(), AdviceStatus.PAID, true));
        assertThat(toldPaid(PART)).isEmpty();
        assertThat(ledger.income().receipts(DAY.plusYears(1))).isEmpty();
    }

    @Test
    void aLodgementIsSaidAndUnsaid() {
        assertThat(said(AdviceStatus.LODGED, DAY, Money.ZERO).isUnlodged()).isFalse();
        assertThat(of(entry).get(0).what()).isEqualTo(AdviceStatus.LODGED);
        assertThat(unsay("advice-2").isUnlodged()).isTrue();
    }

    @Test
    void theOutcomeIsThatOfTheNewestVersion() {
        assertThat(outcome("t-1")).contains(JobOutcome.ISSUED);
        assertThat(outcome("T-2")).contains(JobOutcome.HELD);
        assertThat(outcome("T-3")).isEmpty();
        Entries.enter(ledger, Entries.batch("two", Entries.job("T-2")));
        assertThat(outcome("T-2")).contains(JobOutcome.ISSUED);
    }
}
