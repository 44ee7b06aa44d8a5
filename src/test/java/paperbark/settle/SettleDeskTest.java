package paperbark.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.batch.Ending;
import paperbark.finding.Finding;
import paperbark.ledger.ClaimEntry;
import paperbark.ledger.Entries;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Promise;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * From the advice's file to the ledger, the marked copy and the list: SB-1 with STCs for $504.00
 * and VEECs for $460.00, SB-2 with STCs for $648.00, SB-3 with STCs of which the owner has $400.00
 * and the firm $104.00. All are due on 30 Nov 2026.
 */
class SettleDeskTest {
    private static final String HEAD = "Claim reference,Paid on,Amount,Status,Reason\n";

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
                            Entries.job(
                                    "SB-1",
                                    Entries.claim(SchemeName.STC, "T-100", "504.00"),
                                    Entries.claim(SchemeName.VEEC, "T-100", "460.00")),
                            Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "648.00")),
                            Entries.job("SB-3", shared())));
        }
    }

    private static ClaimEntry shared() {
        ClaimEntry usual = Entries.claim(SchemeName.STC, "T-300", "104.00");
        return new ClaimEntry(
                usual.scheme(),
                usual.buyer(),
                usual.certificates(),
                usual.installedOn(),
                usual.lodgeBy(),
                usual.serials(),
                new Promise(
                        Money.of("104.00"), Money.of("400.00"), Money.ZERO, usual.promise().due()));
    }

    private SettleDesk.Result settle(String content) throws IOException {
        return settle(content, new Advice.Defaults(Optional.empty(), Optional.empty()));
    }

    private SettleDesk.Result settle(String content, Advice.Defaults defaults) throws IOException {
        Path advice = Files.writeString(folder.resolve("advice.csv"), content);
        return SettleDesk.settle(
                new SettleDesk.Order(
                        advice,
                        Optional.empty(),
                        Path.of("input-samples/tables"),
                        Optional.empty(),
                        place,
                        defaults,
                        folder,
                        LocalDate.of(2027, 6, 30),
                        Instant.EPOCH,
                        "test"));
    }

    private static String said(SettleDesk.Result result) {
        return said(result.findings().get(0));
    }

    private static String said(Finding finding) {
        return finding.seen() + " | " + finding.fact() + " | " + finding.remedy();
    }

    private List<String> list(String name) throws IOException {
        return Files.readString(folder.resolve(name), StandardCharsets.UTF_8)
                .replace("\ufeff", "")
                .lines()
                .toList();
    }

    @Test
    void theListSaysOfEachLineWhatBecameOfIt() throws IOException {
        SettleDesk.Result result =
                settle(HEAD + "SB-3-STC,30/11/2026,504.00,paid,\nSB-9,30/11/2026,17.00,paid,\n");
        assertThat(result.ending()).isEqualTo(Ending.HELD);
        assertThat(result.lines()).hasSize(2);
        assertThat(result.written())
                .extracting(path -> path.getFileName().toString())
                .containsExactlyInAnyOrder("advice-settled.xlsx", "advice-settled.csv");
        List<String> list = list("advice-settled.csv");
        assertThat(list.get(0)).startsWith("Row,Outcome,Day,Amount,Of it the firm's");
        assertThat(list.get(1))
                .isEqualTo(
                        "2,matched,30 Nov 2026,504.00,104.00,400.00,0.00,SB-3-STC,SB-3,STC,Kestrel"
                                + " Certificates,104.00,400.00,104.00,0.00,reference,");
        assertThat(list.get(2))
                .startsWith("3,unknown,30 Nov 2026,17.00,,,,,,,,,,,,no claim of that name");
        assertThat(folder.resolve("advices/advice-2.json")).isRegularFile();
    }

    @Test
    void theSameAdviceAgainSaysSoAndLeavesTheFirstList() throws IOException {
        String advice = HEAD + "SB-2-STC,30/11/2026,648.00,paid,\n";
        assertThat(settle(advice).ending()).isEqualTo(Ending.DONE);
        List<String> first = list("advice-settled.csv");
        SettleDesk.Result again = settle(advice);
        assertThat(again.ending()).isEqualTo(Ending.ALREADY);
        assertThat(list("advice-settled.csv")).isEqualTo(first);
        assertThat(list("advice-settled-2.csv").get(1)).startsWith("2,seen before,");
        // One line of two that is new is something new.
        assertThat(settle(advice + "SB-1-STC,30/11/2026,504.00,paid,\n").ending())
                .isEqualTo(Ending.DONE);
    }

    @Test
    void anAdviceOfHeadingsAloneBringsNothingAndIsNotCalledSeen() throws IOException {
        SettleDesk.Result result = settle(HEAD);
        assertThat(result.lines()).isEmpty();
        assertThat(result.ending()).isNotEqualTo(Ending.ALREADY);
    }

    @Test
    void whatNoLineCanDoWithoutIsNamedOnce() throws IOException {
        SettleDesk.Result result = settle("Claim reference,Reason\nSB-2-STC,late\n");
        assertThat(result.ending()).isEqualTo(Ending.HELD);
        assertThat(result.lines()).isEmpty();
        assertThat(result.written()).isEmpty();
        assertThat(result.findings()).hasSize(1);
        assertThat(said(result))
                .contains(
                        "what was paid (amount) or what became of the claim (status) or as the day"
                                + " of the payment (paid-date), so",
                        "found are \"Claim reference\", \"Reason\".");
        assertThat(said(settle("Claim reference,Paid on\nSB-2-STC,1/12/2026\n")))
                .contains("what was paid")
                .doesNotContain("the day of the payment");
        assertThat(said(settle("Claim reference,Amount\nSB-2-STC,648.00\n")))
                .contains("the day of the payment")
                .doesNotContain("what was paid");
        assertThat(said(settle("Claim reference,Status\nSB-2-STC,lodged\n")))
                .contains("the day of the payment")
                .doesNotContain("what was paid");
        assertThat(Files.exists(folder.resolve("advices"))).isFalse();
    }

    @Test
    void aFileThatIsNoAdviceIsRefused() throws IOException {
        SettleDesk.Result result = settle("");
        assertThat(result.ending()).isEqualTo(Ending.REFUSED);
        assertThat(result.findings()).isNotEmpty();
    }

    @Test
    void dayAndBuyerOfLinesThatNameNoneAreTheOnesGiven() throws IOException {
        SettleDesk.Result result =
                settle(
                        "Amount,Certificates\n648.00,\n",
                        new Advice.Defaults(
                                Optional.of(LocalDate.of(2026, 12, 1)),
                                Optional.of("KESTREL certificates")));
        assertThat(result.ending()).isEqualTo(Ending.DONE);
        assertThat(list("advice-settled.csv").get(1))
                .contains("1 Dec 2026", "SB-2-STC", "amount and day, score 85");
    }

    @Test
    void aLedgerThatSomebodyChangedTakesNothingIn() throws IOException, SQLException {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + place);
                var change = connection.createStatement()) {
            change.execute("UPDATE claim SET expected_cents = 1 WHERE id = 1");
        }
        assertThatThrownBy(() -> settle(HEAD + "SB-2-STC,30/11/2026,648.00,paid,\n"))
                .isInstanceOf(LedgerException.class);
        assertThatThrownBy(() -> Withdrawal.run(withdrawal("SB-2")))
                .isInstanceOf(LedgerException.class);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '#',
            value = {
                "SB-2-STC,30/11/2026,600.00,paid,# $600.00 | SB-2-STC: $648.00 was expected and $600.00 has come, $48.00 less. | Ask the buyer for the rest, unless a further part is to come.",
                "SB-2-STC,30/11/2026,648.01,paid,# $648.01 | SB-2-STC: $648.00 was expected and $648.01 has come, $0.01 more. | Ask the buyer what it is for; GST may be due on it.",
                "SB-2-STC,30/11/2026,,failed,no photo# SB-2-STC | SB-2-STC failed: no photo. | Mend what the reason names and let the buyer lodge it again by 23 Nov 2027.",
                "SB-1,30/11/2026,100.00,paid,# SB-1 | The line is matched to no claim: job and amount fit more than one claim; it may be SB-1-STC ($504.00 to come, due 30 Nov 2026), SB-1-VEEC ($460.00 to come, due 30 Nov 2026). | Write the claim reference into the line and settle the advice again.",
                "SB-9,30/11/2026,-17.00,paid,# SB-9 | The line is matched to no claim: no claim of that name is known. | Write the claim reference into the line and settle the advice again."
            })
    void eachFindingSaysWhatCameAndWhatToDo(String line, String said) throws IOException {
        SettleDesk.Result result = settle(HEAD + line + "\n");
        assertThat(said(result)).isEqualTo(said);
        assertThat(result.findings()).hasSize(1);
        assertThat(result.ending()).isEqualTo(Ending.HELD);
    }

    @Test
    void whatIsPaidTwiceFailsOrIsTakenBackIsToldWithWhatHadCome() throws IOException {
        settle(HEAD + "SB-2-STC,1/12/2026,648.00,paid,\n");
        assertThat(said(settle(HEAD + "SB-2-STC,9/12/2026,648.00,paid,\n")))
                .isEqualTo(
                        "$648.00 | SB-2-STC was paid in full before, on 1 Dec 2026, and here comes"
                                + " the same amount again. | Compare with the bank statement; ask the"
                                + " buyer if the money came twice.");
        assertThat(said(settle(HEAD + "SB-2-STC,10/12/2026,,failed,\n")))
                .contains("SB-2-STC failed. $648.00 was paid for it and may be asked back. |");
        assertThat(said(settle(HEAD + "SB-2-STC,11/12/2026,-600.00,paid,\n")))
                .contains(
                        "$600.00 paid for SB-2-STC was taken back; ",
                        "Ask the buyer for the reason.");
    }

    /** All that is taken back may be the owner's; no more of the firm's goes than had come. */
    @Test
    void ofWhatIsTakenBackOnlyTheFirmsPartIsOwedAgain() throws IOException {
        settle(HEAD + "SB-3-STC,1/12/2026,504.00,paid,\n");
        assertThat(said(settle(HEAD + "SB-3-STC,2/12/2026,-504.00,paid,\n")))
                .contains("of which $104.00 had come to the firm; $104.00 is to come.");
    }

    @ParameterizedTest
    @CsvSource({
        // Due on 30 Nov: within a week 20 points, within a month 10, later none.
        "7/12/2026, Kestrel Certificates, , 'amount and day, score 85'",
        "8/12/2026, Kestrel Certificates, 14, 'amount and day, score 90'",
        "23/11/2026, Kestrel Certificates, , 'amount and day, score 85'",
        "31/12/2026, Kestrel Certificates, , 'only the amount fits, with a score of 75'",
        "1/1/2027, Kestrel Certificates, , 'only the amount fits, with a score of 65'",
        "30/11/2026, , 14, 'only the amount fits, with a score of 75'",
        "30/11/2026, , 13, 'only the amount fits, with a score of 60'",
        "30/11/2026, Pipit and Wren, , 'no claim of that name or amount is known'"
    })
    void aMatchByAmountSaysItsScore(String day, String buyer, String certificates, String how)
            throws IOException {
        SettleDesk.Result result =
                settle(
                        "Paid on,Amount,Buyer,Certificates\n%s,648.00,%s,%s\n"
                                .formatted(
                                        day,
                                        buyer == null ? "" : buyer,
                                        certificates == null ? "" : certificates));
        assertThat(result.lines().get(0).how()).isEqualTo(how);
    }

    @Test
    void theSchemeOfALineRulesOutClaimsOfOthers() throws IOException {
        String head = "Paid on,Amount,Buyer,Scheme\n30/11/2026,460.00,Kestrel Certificates,";
        assertThat(settle(head + "STC\n").lines().get(0).how())
                .isEqualTo("no claim of that name or amount is known");
        SettleDesk.Result veec = settle(head + "VEECs\n");
        assertThat(veec.lines().get(0).claim().orElseThrow().reference()).isEqualTo("SB-1-VEEC");
        SettleDesk.Result wrong = settle(head + "EGGS\n");
        assertThat(said(wrong)).contains("The scheme is not known.", "Type ", "STC", "VEEC");
        assertThat(wrong.ending()).isEqualTo(Ending.HELD);
    }

    private Withdrawal.Order withdrawal(String job) {
        return new Withdrawal.Order(
                job, "twice", place, LocalDate.of(2026, 12, 1), Instant.EPOCH, "test");
    }

    @Test
    void aJobIsBookedOutOnceWithItsEntryInAFile() throws IOException {
        Withdrawal.Result result = Withdrawal.run(withdrawal("SB-1"));
        assertThat(result.done()).isTrue();
        assertThat(result.versions()).hasSize(1);
        assertThat(result.claims()).hasSize(2);
        assertThat(folder.resolve("advices/withdrawal-2.json")).isRegularFile();
        assertThat(Withdrawal.run(withdrawal("SB-1")).done()).isFalse();
        assertThat(Withdrawal.run(withdrawal("SB-7")).versions()).isEmpty();
        Owing owing = Owing.of(place, LocalDate.of(2026, 12, 2));
        assertThat(owing.open())
                .extracting(l -> l.claim().reference() + l.daysOverdue())
                .containsExactly("SB-2-STC2", "SB-3-STC2");
    }

    @Test
    void theQuartersOfALedgerTellWhatWasKnownOnADay() throws IOException {
        settle(HEAD + "SB-2-STC,15/1/2027,648.00,paid,\n");
        assertThat(figures(2027, "2027-01-15"))
                .containsExactly(
                        "0 $0.00 $0.00", "3 $1,716.00 $0.00", "0 $0.00 $648.00", "0 $0.00 $0.00");
        assertThat(figures(2027, "2027-01-14").get(2)).isEqualTo("0 $0.00 $0.00");
        assertThat(figures(2027, Entries.DAY.minusDays(1).toString()))
                .containsOnly("0 $0.00 $0.00");
        assertThat(Quarter.ofYear(place, 2028, LocalDate.of(2027, 7, 1)).get(0).from())
                .isEqualTo(LocalDate.of(2027, 7, 1));
    }

    private List<String> figures(int year, String day) {
        return Quarter.ofYear(place, year, LocalDate.parse(day)).stream()
                .map(q -> q.jobs() + " " + q.expected() + " " + q.received())
                .toList();
    }

    @Test
    void aFinancialYearIsCalledByTheYearInWhichItEnds() {
        assertThat(Quarter.yearOf(LocalDate.of(2026, 6, 30))).isEqualTo(2026);
        assertThat(Quarter.yearOf(LocalDate.of(2026, 7, 1))).isEqualTo(2027);
        assertThat(Quarter.yearOf(LocalDate.of(2027, 6, 30))).isEqualTo(2027);
    }

    /** What was called off later was owed, sold and claimed until then. */
    @Test
    void aDayThatIsOverIsToldAsItWas() throws IOException {
        LocalDate before = LocalDate.of(2026, 11, 30);
        assertThat(Withdrawal.run(withdrawal("SB-1")).done()).isTrue();
        assertThat(figures(2027, before.toString()).get(1)).isEqualTo("3 $1,716.00 $0.00");
        assertThat(figures(2027, "2026-12-01").get(1)).startsWith("2 ");
        assertThat(Owing.of(place, before).open())
                .extracting(l -> l.claim().reference())
                .contains("SB-1-STC");
    }
}
