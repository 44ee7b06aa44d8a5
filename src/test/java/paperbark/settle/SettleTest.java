package paperbark.settle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.batch.BuyerPayments;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Words;
import paperbark.ledger.AdviceBook;
import paperbark.ledger.ClaimEntry;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Entries;
import paperbark.ledger.Export;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Promise;
import paperbark.settle.SettledLine.Ending;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** Two jobs: SB-1 with STCs for $504.00 and VEECs for $460.00, SB-2 with STCs for $648.00. */
class SettleTest {
    private static final ColumnNames<AdviceField> NAMES =
            ColumnNames.of(
                    List.of(AdviceField.values()),
                    new Sheet("advice-columns.csv", "", 1, List.of(), List.of()),
                    (row, why) -> {});

    private static final BuyerPayments OFFERS =
            new BuyerPayments(Path.of("input-samples/tables"), Optional.empty());

    @TempDir private Path folder;

    private LedgerPlace place;

    @BeforeEach
    void claim() {
        place = place(folder);
        Ledger.create(place, Instant.EPOCH);
        try (Ledger ledger = Ledger.open(place)) {
            Entries.enter(
                    ledger,
                    Entries.batch(
                            "one",
                            Entries.job(
                                    "SB-1",
                                    Entries.claim(SchemeName.STC, "T-100", "504.00"),
                                    Entries.claim(SchemeName.VEEC, "T-100", "460.00")),
                            Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "648.00"))));
        }
    }

    LedgerPlace place(Path folder) {
        return new LedgerPlace.InFile(folder.resolve("paperbark.db"));
    }

    private Advice.Settled settle(String... lines) {
        Sheet sheet =
                SheetReader.readCsv(
                                "advice.csv",
                                String.join("\n", lines)
                                        .concat("\n")
                                        .getBytes(StandardCharsets.UTF_8),
                                NAMES::knows)
                        .result()
                        .orElseThrow();
        AdviceBook.Source source = Entries.advice(String.join("", lines));
        try (Ledger ledger = Ledger.open(place)) {
            Advice.Settled settled =
                    Advice.settle(
                            sheet,
                            ColumnMap.of(sheet, NAMES).result().orElseThrow(),
                            source,
                            ledger,
                            new Advice.Firm(Words.SHIPPED, claim -> Optional.empty()),
                            new Advice.Defaults(Optional.empty(), Optional.empty()));
            ledger.verify();
            return settled;
        }
    }

    private Ending only(String... lines) {
        List<SettledLine> all = settle(lines).lines();
        assertThat(all).hasSize(1);
        return all.get(0).ending();
    }

    private ClaimState state(String reference) {
        try (Ledger ledger = Ledger.open(place)) {
            return ledger.claims(LocalDate.of(2027, 6, 30)).stream()
                    .filter(c -> c.reference().equals(reference))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private List<Export.ExportedTable> everything() {
        try (Ledger ledger = Ledger.open(place)) {
            return Export.of(ledger);
        }
    }

    @ParameterizedTest(name = "{0} = {1} -> {2}")
    @CsvSource({
        "Claim reference, SB-1-STC, reference and job",
        "Claim reference, sb-2-stc, reference",
        "Claim reference, SB-2, job",
        "Job, SB-2, job",
        "Serial, t 200, serial"
    })
    void aClaimIsFoundByAnyOfItsNames(String heading, String name, String how) {
        String amount = name.contains("2") ? "648.00" : "504.00";
        SettledLine line =
                settle(heading + ",Paid on,Amount", name + ",30/11/2026," + amount).lines().get(0);
        assertThat(line.ending()).isEqualTo(Ending.MATCHED);
        assertThat(line.claim().orElseThrow().received()).isEqualTo(Money.of(amount));
        assertThat(how).startsWith(line.how());
    }

    @Test
    void amongSeveralClaimsOfAJobTheSchemeOrTheAmountDecides() {
        assertThat(only("Job,Scheme,Paid on,Amount", "SB-1,VEECs,30/11/2026,100.00"))
                .isEqualTo(Ending.SHORT);
        assertThat(state("SB-1-VEEC").outstanding()).isEqualTo(Money.of("360.00"));
        assertThat(only("Job,Paid on,Amount", "SB-1,30/11/2026,504.00")).isEqualTo(Ending.MATCHED);
        assertThat(state("SB-1-STC").isOpen()).isFalse();
    }

    @Test
    void whatIsOddAboutACellIsToldAndTheLineStillCounts() {
        Advice.Settled settled =
                settle("Claim reference,Paid on,Amount", "SB-1-S\u200bTC,46356,504.00");
        assertThat(settled.lines().get(0).ending()).isEqualTo(Ending.MATCHED);
        assertThat(settled.lines().get(0).day()).isEqualTo(LocalDate.of(2026, 11, 30));
        assertThat(settled.findings())
                .extracting(f -> f.code() + " " + f.severity())
                .containsExactly("TEXT_CLEANED NOTE", "NUMBER_FOR_DATE CHECK");
    }

    @Test
    void whereNeitherDecidesAPersonMust() {
        Advice.Settled settled = settle("Job,Paid on,Amount", "SB-1,30/11/2026,100.00");
        assertThat(settled.lines().get(0).ending()).isEqualTo(Ending.UNKNOWN);
        assertThat(settled.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.PAYMENT_UNMATCHED);
        assertThat(settled.findings().get(0).fact()).contains("SB-1-STC", "SB-1-VEEC");
        assertThat(state("SB-1-STC").received()).isEqualTo(Money.ZERO);
    }

    @Test
    void namesThatContradictEachOtherAreNeverMatched() {
        Advice.Settled settled =
                settle("Claim reference,Serial,Paid on,Amount", "SB-2-STC,T-100,30/11/2026,648.00");
        assertThat(settled.lines().get(0).ending()).isEqualTo(Ending.UNKNOWN);
        assertThat(settled.findings().get(0).fact()).contains("name different claims");
    }

    @Test
    void theSameAdviceAgainChangesNothing() {
        String[] advice = {
            "Claim reference,Paid on,Amount,Status",
            "SB-1-STC,30/11/2026,504.00,paid",
            "SB-2-STC,30/11/2026,,lodged",
            "SB-9,30/11/2026,17.00,paid"
        };
        settle(advice);
        List<Export.ExportedTable> before = everything();
        assertThat(settle(advice).lines())
                .extracting(SettledLine::ending)
                .containsExactly(Ending.SEEN, Ending.SEEN, Ending.UNKNOWN);
        assertThat(everything()).isEqualTo(before);
    }

    @Test
    void partsAddUpAndWhatWasTakenBackIsOwedAgain() {
        assertThat(only("Job,Paid on,Amount", "SB-2,30/11/2026,600.00")).isEqualTo(Ending.SHORT);
        assertThat(only("Job,Paid on,Amount", "SB-2,4/12/2026,48.00")).isEqualTo(Ending.MATCHED);
        assertThat(only("Job,Paid on,Amount", "SB-2,9/12/2026,-48.00")).isEqualTo(Ending.REVERSED);
        assertThat(state("SB-2-STC").outstanding()).isEqualTo(Money.of("48.00"));
        assertThat(only("Job,Paid on,Amount,Status", "SB-2,10/12/2026,600.00,reversed"))
                .isEqualTo(Ending.REVERSED);
        assertThat(state("SB-2-STC").outstanding()).isEqualTo(Money.of("648.00"));
    }

    @Test
    void aSecondPaymentOfTheWholeAmountIsHeldUp() {
        assertThat(only("Job,Paid on,Amount", "SB-2,30/11/2026,648.00")).isEqualTo(Ending.MATCHED);
        assertThat(only("Job,Paid on,Amount", "SB-2,7/12/2026,648.00")).isEqualTo(Ending.DUPLICATE);
        assertThat(state("SB-2-STC").received()).isEqualTo(Money.of("648.00"));
    }

    @Test
    void twoEqualLinesOfOneAdviceAreTwoLines() {
        Advice.Settled settled =
                settle("Job,Paid on,Amount", "SB-2,30/11/2026,324.00", "SB-2,30/11/2026,324.00");
        assertThat(settled.lines())
                .extracting(SettledLine::ending)
                .containsExactly(Ending.SHORT, Ending.MATCHED);
    }

    @Test
    void moreThanExpectedIsTold() {
        Advice.Settled settled = settle("Job,Paid on,Amount", "SB-2,30/11/2026,700.00");
        assertThat(settled.lines().get(0).ending()).isEqualTo(Ending.OVER);
        assertThat(settled.findings().get(0).fact()).contains("$52.00 more");
    }

    @ParameterizedTest
    @CsvSource({"648.00, OWNER_PAID, 0.00", "12.00, MATCHED, 12.00", "660.00, MATCHED, 12.00"})
    void whatTheOwnerIsPaidIsNeverTheFirmsMoney(String told, Ending ending, String firm) {
        ownerIsPaid();
        assertThat(only("Claim reference,Paid on,Amount", "SB-4-STC,30/11/2026," + told))
                .isEqualTo(ending);
        assertThat(state("SB-4-STC").received()).isEqualTo(Money.of(firm));
    }

    private void ownerIsPaid() {
        try (Ledger ledger = Ledger.open(place)) {
            ClaimEntry usual = Entries.claim(SchemeName.STC, "T-400", "0.00");
            Entries.enter(
                    ledger,
                    Entries.batch(
                            "two",
                            Entries.job(
                                    "SB-4",
                                    new ClaimEntry(
                                            SchemeName.STC,
                                            usual.buyer(),
                                            usual.certificates(),
                                            usual.installedOn(),
                                            usual.lodgeBy(),
                                            usual.serials(),
                                            new Promise(
                                                    Money.of("12.00"),
                                                    Money.of("648.00"),
                                                    Money.ZERO,
                                                    usual.promise().due())))));
        }
    }

    @Test
    void aFailedClaimIsNoLongerExpectedUntilItIsPaidAfterAll() {
        assertThat(
                        only(
                                "Claim reference,Paid on,Status,Reason",
                                "SB-2-STC,1/12/2026,failed,wrong zone"))
                .isEqualTo(Ending.FAILED);
        assertThat(state("SB-2-STC").failed().orElseThrow().reason()).isEqualTo("wrong zone");
        assertThat(state("SB-2-STC").isOpen()).isFalse();
        assertThat(only("Job,Paid on,Amount", "SB-2,20/12/2026,648.00")).isEqualTo(Ending.MATCHED);
        assertThat(state("SB-2-STC").failed()).isEmpty();
    }

    @Test
    void theBuyersOwnReferenceIsRememberedFromItsFirstAdvice() {
        settle(
                "Claim reference,Buyer's reference,Paid on,Status",
                "SB-2-STC,K-77,1/12/2026,lodged");
        assertThat(only("Buyer's reference,Paid on,Amount", "K-77,8/12/2026,648.00"))
                .isEqualTo(Ending.MATCHED);
    }

    @Test
    void withoutAnyNameAmountBuyerAndDayTogetherAreSureAndLessIsNot() {
        String head = "Paid on,Amount,Buyer";
        Advice.Settled unsure = settle(head, "20/1/2027,648.00,Kestrel Certificates");
        assertThat(unsure.lines().get(0).ending()).isEqualTo(Ending.UNKNOWN);
        assertThat(unsure.findings().get(0).fact()).contains("score of 65", "SB-2-STC");
        SettledLine sure = settle(head, "2/12/2026,648.00,Kestrel Certificates").lines().get(0);
        assertThat(sure.ending()).isEqualTo(Ending.MATCHED);
        assertThat(sure.how()).isEqualTo("amount and day, score 85");
        assertThat(only(head, "2/12/2026,504.00,Whimbrel Exchange")).isEqualTo(Ending.UNKNOWN);
    }

    @Test
    void twoClaimsThatFitAlikeAreNeverMatchedByAmount() {
        try (Ledger ledger = Ledger.open(place)) {
            Entries.enter(
                    ledger,
                    Entries.batch(
                            "two",
                            Entries.job("SB-3", Entries.claim(SchemeName.STC, "T-300", "648.00"))));
        }
        assertThat(only("Paid on,Amount,Buyer", "2/12/2026,648.00,Kestrel Certificates"))
                .isEqualTo(Ending.UNKNOWN);
    }

    @Test
    void aLineWithoutMatchIsSettledOnceSomebodyWritesTheJobIntoIt() {
        assertThat(
                        only(
                                "Reference,Paid on,Amount".replace("Reference", "Claim reference"),
                                "R-5,1/2/2027,648.00"))
                .isEqualTo(Ending.UNKNOWN);
        assertThat(only("Claim reference,Job,Paid on,Amount", "R-5,SB-2,1/2/2027,648.00"))
                .isEqualTo(Ending.MATCHED);
        assertThat(
                        everything().stream()
                                .filter(t -> t.name().equals("line"))
                                .findFirst()
                                .orElseThrow()
                                .rows())
                .hasSize(1);
    }

    @Test
    void rowsThatCannotBeUsedAreToldAndTheOthersGoThrough() {
        Advice.Settled settled =
                settle(
                        "Job,Paid on,Amount,Status",
                        "SB-2,31/2/2027,648.00,paid",
                        "SB-2,30/11/2026,six hundred,paid",
                        "SB-2,30/11/2026,,",
                        "SB-2,30/11/2026,648.00,perhaps",
                        "SB-1,,504.00,paid",
                        "SB-2,30/11/2026,648.00,paid",
                        "Total,,648.00,");
        assertThat(settled.lines()).extracting(SettledLine::row).containsExactly(7);
        assertThat(settled.findings())
                .extracting(f -> f.place().rowNumber() + " " + f.code().code())
                .containsExactly(
                        "2 date-unreadable",
                        "3 money-unreadable",
                        "4 money-unreadable",
                        "5 choice-unknown",
                        "6 date-unreadable");
    }

    @Test
    void everyWordForAnEndingIsItsOwn() {
        assertThat(List.of(Ending.values()).stream().map(Ending::word).distinct())
                .hasSameSizeAs(Set.of(Ending.values()));
    }

    @ParameterizedTest
    @CsvSource({
        "Paid 30/11/2026, MATCHED",
        "part paid - first half, MATCHED",
        "PAID: net of fees, MATCHED",
        "Failed - no photo of the plate, FAILED",
        "Lodged with the register, LODGED"
    })
    void aStatusAtTheBeginningOfALongerTextCounts(String status, Ending ending) {
        Advice.Settled settled =
                settle(
                        "Claim reference,Paid on,Amount,Status",
                        "SB-1-STC,30/11/2026,504.00," + status);

        assertThat(settled.lines()).extracting(SettledLine::ending).containsExactly(ending);
        assertThat(settled.lines().get(0).reason()).isEqualTo(status);
    }

    @ParameterizedTest
    @CsvSource({"Not paid", "Paid - reversed", "Paid but not yet", "Paying"})
    void aStatusThatSaysTwoThingsIsLeftToAPerson(String status) {
        Advice.Settled settled =
                settle(
                        "Claim reference,Paid on,Amount,Status",
                        "SB-1-STC,30/11/2026,504.00," + status);

        assertThat(settled.lines()).isEmpty();
        assertThat(settled.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.CHOICE_UNKNOWN);
        assertThat(settled.needsPerson()).isTrue();
    }

    @Test
    void moneyTakenBackThatNeverCameLeavesNoMoreOwedThanTheClaim() {
        Advice.Settled settled =
                settle("Claim reference,Paid on,Amount", "SB-1-STC,30/11/2026,-504.00");

        assertThat(state("SB-1-STC").outstanding()).isEqualTo(Money.of("504.00"));
        assertThat(settled.findings().get(0).fact())
                .isEqualTo(
                        "$504.00 paid for SB-1-STC was taken back, of which $0.00 had come to the firm; $504.00 is to come.");
    }

    @Test
    void moneyTakenBackDoesNotMendAClaimThatFailed() {
        settle("Claim reference,Paid on,Amount", "SB-1-STC,30/11/2026,504.00");
        settle("Claim reference,Paid on,Status", "SB-1-STC,1/12/2026,failed");
        settle("Claim reference,Paid on,Amount", "SB-1-STC,2/12/2026,-504.00");

        assertThat(state("SB-1-STC").failed()).isPresent();
        assertThat(state("SB-1-STC").outstanding()).isEqualTo(Money.ZERO);
    }

    @Test
    void aPaymentOfADayToComeIsACheckAndIsNotTakenIn() {
        List<Export.ExportedTable> before = everything();
        Advice.Settled settled =
                settle("Claim reference,Paid on,Amount", "SB-1-STC,30/12/2030,504.00");

        assertThat(settled.lines().get(0).ending()).isEqualTo(Ending.TO_COME);
        assertThat(settled.needsPerson()).isTrue();
        assertThat(settled.findings())
                .extracting(f -> f.code() + " " + f.severity())
                .containsExactly("PAYMENT_IN_FUTURE CHECK");
        assertThat(everything()).isEqualTo(before);
    }

    @Test
    void aLineOfTheDayOfTheRunIsTakenIn() {
        assertThat(only("Claim reference,Paid on,Amount", "SB-1-STC,23/11/2027,504.00"))
                .isEqualTo(Ending.MATCHED);
        assertThat(only("Claim reference,Paid on,Amount", "SB-2-STC,24/11/2027,648.00"))
                .isEqualTo(Ending.TO_COME);
    }

    private ByHand.Result byHand(String amount, LocalDate on) throws IOException {
        AdviceBook.Source now = Entries.advice("");
        return ByHand.paid(
                new ByHand.Payment("SB-4-STC", Money.of(amount), on, false, false),
                new ByHand.Order(place, OFFERS, now.day(), now.at(), now.program()));
    }

    @ParameterizedTest
    @CsvSource({
        "12.00, 660.00, 'money of the firm, its part of the payment; the owner''s $648.00 is not in it'",
        "660.00, 12.00, 'the whole payment: $12.00 is the firm''s, $648.00 the owner''s'"
    })
    void thePartAndTheWholeOfAPaymentAreTheSameMoney(String byHand, String told, String understood)
            throws IOException {
        ownerIsPaid();
        LocalDate on = LocalDate.of(2026, 11, 30);
        assertThat(byHand(byHand, on).remarks())
                .containsExactly("$" + byHand + " is understood as " + understood + ".");

        String headings = "Claim reference,Paid on,Amount";
        assertThat(only(headings, "SB-4-STC,30/11/2026," + told)).isEqualTo(Ending.SEEN);
        assertThat(only(headings, "SB-4-STC,2/12/2026," + told)).isEqualTo(Ending.DUPLICATE);
        assertThat(only(headings, "SB-4-STC,20/12/2026," + told)).isEqualTo(Ending.DUPLICATE);
        assertThat(byHand(told, on).before()).hasSize(1);
        assertThat(state("SB-4-STC").received()).isEqualTo(Money.of("12.00"));
        // What the owner was paid is told beside it, and is none of that money.
        assertThat(only(headings, "SB-4-STC,30/11/2026,648.00")).isEqualTo(Ending.OWNER_PAID);
    }

    @Test
    void whatIsNoPartOfAPaymentAsAgreedIsTakenForTheFirms() throws IOException {
        ownerIsPaid();
        assertThat(byHand("5.00", LocalDate.of(2026, 11, 30)).remarks())
                .containsExactly(
                        "$5.00 is understood as money of the firm; the owner's $648.00 is not in it.");
        assertThat(byHand("648.00", LocalDate.of(2026, 11, 30)).remarks())
                .containsExactly(
                        "$648.00 is understood as what the owner is paid; nothing of it is the firm's.");
        assertThat(state("SB-4-STC").received()).isEqualTo(Money.of("5.00"));
    }
}
