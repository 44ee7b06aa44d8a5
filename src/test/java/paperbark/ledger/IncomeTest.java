package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What was sold and what came, as it was known by a day. */
class IncomeTest {
    private static final LocalDate DAY = Entries.DAY;
    private static final Sale SALE = sale(DAY, "4620.00", "420.00");

    @TempDir private Path folder;

    private Ledger ledger;

    @BeforeEach
    void open() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static Sale sale(LocalDate installedOn, String price, String gst) {
        return new Sale(installedOn, Money.of(price), Money.of(gst));
    }

    private static JobEntry job(String reference) {
        return Entries.job(reference, Entries.claim(SchemeName.STC, "S-" + reference, "504.00"));
    }

    private static JobEntry sold(JobEntry job, Optional<Sale> sale) {
        return new JobEntry(
                job.reference(),
                job.row(),
                job.corrects(),
                job.outcome(),
                job.pack(),
                job.installedOn(),
                job.warrantyUntil(),
                job.siteKey(),
                job.prints(),
                sale,
                job.claims(),
                job.held(),
                job.papers());
    }

    private void batch(String name, LocalDate day, JobEntry... jobs) {
        BatchEntry batch = Entries.batch(name, jobs);
        Entries.enter(ledger, BatchEntryBuilder.builder(batch).day(day).build());
    }

    private void withdraw(LocalDate day, String... jobs) {
        List<WithdrawalEntry.Line> lines =
                List.of(jobs).stream()
                        .map(job -> new WithdrawalEntry.Line(job, "called off"))
                        .toList();
        ledger.withdraw(new WithdrawalEntry(lines, "", "", day, Instant.EPOCH, "test"));
    }

    private void told(int line, AdviceStatus what, LocalDate day, String amount) {
        ledger.settle(
                Entries.advice("33"),
                book -> {
                    Money money = Money.of(amount);
                    AdviceLine said = new AdviceLine("k" + line, line, day, money, "T-1-STC");
                    ClaimState claim = book.byReference("T-1-STC").get(0);
                    return book.match(
                            book.enter(said), said, claim, what, money, "reference", "", "");
                });
    }

    @Test
    void aSaleIsKnownFromTheDayOfItsBatch() {
        batch("one", DAY, job("T-1"));
        assertThat(ledger.income().sales(DAY.minusDays(1))).isEmpty();
        assertThat(ledger.income().sales(DAY)).containsExactly(SALE);
    }

    @Test
    void salesComeInTheOrderOfInstallationAndThenOfJobs() {
        Sale dear = sale(DAY, "5500.00", "500.00");
        Sale early = sale(DAY.minusDays(1), "1100.00", "100.00");
        batch(
                "one",
                DAY,
                sold(job("T-3"), Optional.of(dear)),
                job("T-2"),
                sold(job("T-4"), Optional.of(early)),
                sold(job("T-5"), Optional.empty()));
        assertThat(ledger.income().sales(DAY)).containsExactly(early, SALE, dear);
    }

    @Test
    void ofAJobTheNewestVersionOfThatDayCounts() {
        Sale dearer = sale(DAY, "4840.00", "440.00");
        batch("one", DAY, job("T-1"));
        batch("two", DAY.plusDays(2), sold(job("T-1"), Optional.of(dearer)));
        assertThat(ledger.income().sales(DAY.plusDays(1))).containsExactly(SALE);
        assertThat(ledger.income().sales(DAY.plusDays(2))).containsExactly(dearer);
    }

    @Test
    void whatIsCalledOffIsNoSaleFromThatDayUntilItComesAgain() {
        batch("one", DAY, job("T-1"));
        withdraw(DAY.plusDays(1), "T-1");
        assertThat(ledger.income().sales(DAY)).containsExactly(SALE);
        assertThat(ledger.income().sales(DAY.plusDays(1))).isEmpty();
        assertThat(ledger.income().isSold("T-1")).isFalse();

        batch("two", DAY.plusDays(3), job("T-1"));
        assertThat(ledger.income().sales(DAY.plusDays(2))).isEmpty();
        assertThat(ledger.income().sales(DAY.plusDays(3))).containsExactly(SALE);
        assertThat(ledger.income().isSold("T-1")).isTrue();
    }

    @Test
    void aJobWhosePlaceAnotherTakesIsNoSaleFromThatDay() {
        Sale other = sale(DAY, "4950.00", "450.00");
        batch("one", DAY, job("T-1"));
        batch(
                "two",
                DAY.plusDays(1),
                Entries.correcting("T-1", sold(job("T-2"), Optional.of(other))));
        assertThat(ledger.income().sales(DAY)).containsExactly(SALE);
        assertThat(ledger.income().sales(DAY.plusDays(1))).containsExactly(other);
        assertThat(ledger.income().isSold("T-1")).isFalse();
        assertThat(ledger.income().isSold("t-2")).isTrue();
        assertThat(ledger.income().entriesOfSale("T-1")).containsExactly("two", "one");
        assertThat(ledger.income().entriesOfSale("T-2")).containsExactly("two");
        assertThat(ledger.income().entriesOfSale("T-2", "T-1")).containsExactly("two", "one");
    }

    @Test
    void aJobThatIsOnlyBookedOrUnknownIsNotSold() {
        batch("one", DAY, sold(job("T-1"), Optional.empty()));
        assertThat(ledger.income().isSold("T-1")).isFalse();
        assertThat(ledger.income().isSold("T-2")).isFalse();
        assertThat(ledger.income().entriesOfSale("T-2")).isEmpty();
    }

    @Test
    void eachWithdrawalNamesTheSalesThatItCalledOff() {
        batch("one", DAY, job("T-2"), job("T-1"), sold(job("T-3"), Optional.empty()), job("T-4"));
        withdraw(DAY, "T-2", "T-3", "T-1");
        withdraw(DAY, "T-4");
        assertThat(ledger.income().calledOff())
                .containsExactly(
                        Map.entry("withdrawal-2", List.of("T-1", "T-2")),
                        Map.entry("withdrawal-3", List.of("T-4")));
        assertThat(ledger.income().entriesOfSale("T-1")).containsExactly("withdrawal-2", "one");
    }

    @Test
    void receiptsAreWhatCameOrWasTakenBackByADayInTheOrderOfTheLines() {
        batch("one", DAY, job("T-1"));
        told(1, AdviceStatus.LODGED, DAY, "0.00");
        told(2, AdviceStatus.PAID, DAY.plusDays(3), "504.00");
        told(3, AdviceStatus.PAID, DAY.plusDays(2), "-4.00");
        Receipt came = new Receipt(DAY.plusDays(3), SchemeName.STC, Money.of("504.00"));
        Receipt taken = new Receipt(DAY.plusDays(2), SchemeName.STC, Money.of("-4.00"));
        assertThat(ledger.income().receipts(DAY.plusDays(1))).isEmpty();
        assertThat(ledger.income().receipts(DAY.plusDays(2))).containsExactly(taken);
        assertThat(ledger.income().receipts(DAY.plusDays(3))).containsExactly(came, taken);
    }

    @Test
    void whatCameForAClaimThatFellAwayIsToldFromThatDayAsLongAsItIsHere() {
        batch("one", DAY, job("T-1"), job("T-2"));
        told(1, AdviceStatus.PAID, DAY, "504.00");
        withdraw(DAY.plusDays(1), "T-1", "T-2");
        assertThat(ledger.paidBefore(DAY)).isEmpty();
        assertThat(ledger.paidBefore(DAY.plusDays(1)))
                .singleElement()
                .satisfies(
                        claim -> {
                            assertThat(claim.reference()).isEqualTo("T-1-STC");
                            assertThat(claim.received()).isEqualTo(Money.of("504.00"));
                            assertThat(claim.active()).isFalse();
                            assertThat(claim.isOpen()).isFalse();
                            assertThat(claim.isUnlodged()).isFalse();
                        });
        told(2, AdviceStatus.PAID, DAY, "-504.00");
        assertThat(ledger.paidBefore(DAY.plusDays(1))).isEmpty();
    }
}
