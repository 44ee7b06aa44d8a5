package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.ledger.AdviceLine;
import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.WithdrawalEntry;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What is told of claims from one question is what the ledger says of them on the day. */
class LedgerFactsTest {
    private static final LocalDate DAY = Entries.DAY;

    @TempDir private Path folder;

    private Ledger ledger;

    @BeforeEach
    void twoClaims() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
        Entries.enter(
                ledger,
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00")),
                        Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "36.10"))));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private List<ClaimState> claims(LocalDate today) {
        return new LedgerFacts(ledger, today).claims();
    }

    private void assertSame(LocalDate today) {
        assertThat(claims(today)).isEqualTo(ledger.claims(today));
    }

    private void paid(LocalDate day) {
        ledger.settle(
                Entries.advice("paid " + day),
                book -> {
                    Money money = Money.of("36.10");
                    AdviceLine line = new AdviceLine("paid " + day, 2, day, money, "SB-2-STC");
                    ClaimState claim = book.byReference("SB-2-STC").get(0);
                    return book.match(
                            book.enter(line),
                            line,
                            claim,
                            AdviceStatus.PAID,
                            money,
                            "reference",
                            "",
                            "");
                });
    }

    private void withdrawn(LocalDate day) {
        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("SB-1", "called off")),
                        "",
                        "",
                        day,
                        Instant.EPOCH,
                        "test"));
    }

    @Test
    void whereNothingIsOfALaterDay() {
        paid(DAY);
        withdrawn(DAY);
        assertThat(claims(DAY))
                .singleElement()
                .satisfies(c -> assertThat(c.received()).isEqualTo(Money.of("36.10")));
        assertSame(DAY);
    }

    @Test
    void whatWasCalledOffOnALaterDayStandsStill() {
        withdrawn(DAY.plusDays(1));
        assertThat(claims(DAY)).hasSize(2);
        assertSame(DAY);
        assertThat(claims(DAY.plusDays(1))).hasSize(1);
    }

    @Test
    void whatIsPaidOnALaterDayIsNotHereYet() {
        paid(DAY.plusDays(1));
        assertThat(claims(DAY)).allMatch(c -> c.received().isZero());
        assertSame(DAY);
        assertThat(claims(DAY.plusDays(1))).anyMatch(c -> !c.received().isZero());
    }

    @Test
    void whatIsClaimedOnALaterDayIsNotThereYet() {
        assertThat(claims(DAY.minusDays(1))).isEmpty();
        assertSame(DAY.minusDays(1));
    }
}
