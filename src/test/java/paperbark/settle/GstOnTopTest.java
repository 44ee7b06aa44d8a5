package paperbark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.batch.BuyerPayments;
import paperbark.ledger.ClaimEntry;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Promise;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * Claims for ten STCs of owners in business who are paid, by the sample firm's offers "plus GST": A
 * at Pipit's 36.60, B at Kestrel's 37.20 less a fee of 15.00, C by no offer of the table.
 */
class GstOnTopTest {
    private static final Path TABLES = Path.of("input-samples/tables");
    private static final LocalDate TODAY = LocalDate.of(2026, 12, 10);

    @TempDir private Path folder;

    private LedgerPlace place;

    @BeforeEach
    void claim() {
        place = new LedgerPlace.InFile(folder.resolve("paperbark.db"));
        Ledger.create(place, Instant.EPOCH);
        try (Ledger ledger = Ledger.open(place)) {
            Entries.enter(
                    ledger,
                    Entries.batch(
                            "one",
                            Entries.job("A", claim("Pipit and Wren", "38.73", "360.00")),
                            Entries.job("B", claim("Kestrel Certificates", "38.82", "350.00")),
                            Entries.job("C", claim("Pipit and Wren", "9.00", "360.00"))));
        }
    }

    private static ClaimEntry claim(String buyer, String toFirm, String toOwner) {
        return new ClaimEntry(
                SchemeName.STC,
                buyer,
                10,
                Entries.DAY,
                Optional.of(Entries.DAY.plusYears(1)),
                List.of(),
                new Promise(
                        Money.of(toFirm),
                        Money.of(toOwner),
                        Money.ZERO,
                        Optional.of(Entries.DAY.plusDays(7))));
    }

    private ByHand.Result paid(String claim, String amount) throws IOException {
        return ByHand.paid(
                new ByHand.Payment(claim, Money.of(amount), TODAY, false, false),
                new ByHand.Order(
                        place,
                        new BuyerPayments(TABLES, Optional.empty()),
                        TODAY,
                        Instant.EPOCH,
                        "test"));
    }

    @ParameterizedTest
    @CsvSource({
        "A, 402.60, 'the whole payment: $38.73 is the firm''s, $360.00 the owner''s, $3.87 nobody''s yet'",
        "A, 398.73, 'the whole payment: $38.73 is the firm''s, $360.00 the owner''s'",
        "B, 394.20, 'the whole payment: $38.82 is the firm''s, $350.00 the owner''s, $5.38 nobody''s yet'"
    })
    void whatTheBuyerSendsIsTheWholePayment(String job, String amount, String understood)
            throws IOException {
        ByHand.Result result = paid(job + "-STC", amount);
        assertThat(result.remarks())
                .containsExactly("$" + amount + " is understood as " + understood + ".");
        assertThat(result.claims().get(0).balance()).isEqualTo("$0.00 still to come");
    }

    @Test
    void withoutAnInvoiceTheGstOnTopIsStillToCome() throws IOException {
        ByHand.Result first = paid("A-STC", "366.00");
        assertThat(first.remarks())
                .containsExactly(
                        "$366.00 is understood as the whole payment without GST on top: $6.00 is the"
                                + " firm's, $360.00 the owner's.");
        assertThat(first.claims().get(0).balance()).isEqualTo("$32.73 still to come");
        ByHand.Result second = paid("A-STC", "36.60");
        assertThat(second.remarks())
                .containsExactly(
                        "$36.60 is understood as the GST on top: $32.73 is the firm's, $3.87 nobody's yet.");
        assertThat(second.claims().get(0).balance()).isEqualTo("$0.00 still to come");
    }

    /** One cent beside a sum of the sheets is no sum of the sheets. */
    @ParameterizedTest
    @CsvSource({"A-STC, 402.59", "A-STC, 366.01", "C-STC, 402.60", "C-STC, 396.00"})
    void whatNoOfferSaysIsNotUnderstood(String claim, String amount) throws IOException {
        assertThat(paid(claim, amount).refused()).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource({
        "402.60, matched, '402.60,38.73,360.00,3.87'",
        "366.00, short, '366.00,6.00,360.00,0.00'"
    })
    void anAdviceIsUnderstoodTheSame(String amount, String outcome, String shares)
            throws IOException {
        SettleDesk.Result result = settle("8/12/2026," + amount);
        assertThat(Files.readString(folder.resolve("advice-settled.csv")))
                .contains("2," + outcome + ",8 Dec 2026," + shares + ",A-STC,");
        assertThat(result.findings())
                .extracting(f -> f.remedy())
                .isSubsetOf(
                        "Let the owner give the buyer their tax invoice; the GST on top is paid against it.");
    }

    @Test
    void ofAPaymentThatIsTakenBackEachGivesTheirShare() throws IOException {
        settle("8/12/2026,402.60");
        SettledLine back = settle("9/12/2026,-402.60").lines().get(0);
        assertThat(back.firms()).contains(Money.of("-38.73"));
        assertThat(back.owners()).contains(Money.of("-360.00"));
        assertThat(back.nobodys()).contains(Money.of("-3.87"));
    }

    private SettleDesk.Result settle(String line) throws IOException {
        Path advice =
                Files.writeString(
                        folder.resolve("advice.csv"),
                        "Claim reference,Paid on,Amount\nA-STC," + line + "\n");
        return SettleDesk.settle(
                new SettleDesk.Order(
                        advice,
                        Optional.empty(),
                        TABLES,
                        Optional.empty(),
                        place,
                        new Advice.Defaults(Optional.empty(), Optional.empty()),
                        folder,
                        TODAY,
                        Instant.EPOCH,
                        "test"));
    }
}
