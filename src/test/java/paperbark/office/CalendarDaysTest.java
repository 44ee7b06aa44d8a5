package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.job.Register;
import paperbark.ledger.AdviceLine;
import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Entries;
import paperbark.ledger.JobEntry;
import paperbark.ledger.JobOutcome;
import paperbark.ledger.Ledger;
import paperbark.ledger.WithdrawalEntry;
import paperbark.output.calendar.CalendarDay;
import paperbark.rules.Rulebook;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** Which days the calendar has, with how much warning, and which of them count no longer. */
class CalendarDaysTest {
    private static final LocalDate DAY = Entries.DAY;

    @TempDir private Path folder;

    private Office office;
    private Ledger ledger;

    @BeforeEach
    void makeAnOffice() throws IOException {
        office = Offices.make(folder.resolve("office"));
        ledger = Ledger.open(office.ledger());
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private LedgerFacts facts(LocalDate today) {
        return new LedgerFacts(ledger, today);
    }

    private List<CalendarDay> days(LocalDate today, String beginning) throws IOException {
        Optional<FirmTables> tables = FirmTablesReader.read(office.tables()).result();
        return CalendarDays.of(facts(today), new KnownDays(office), tables, Register.RULES).stream()
                .filter(d -> d.name().startsWith(beginning))
                .toList();
    }

    private List<LocalDate> dates(LocalDate today, String beginning) throws IOException {
        return days(today, beginning).stream().map(CalendarDay::day).toList();
    }

    private void table(String name, String... rows) throws IOException {
        Path file = office.tables().resolve(name);
        String headings = Files.readAllLines(file).get(0);
        Files.writeString(file, headings + "\n" + String.join("\n", rows) + "\n");
    }

    private static JobEntry job(JobOutcome outcome) {
        return outcome == JobOutcome.HELD
                ? Entries.held("SB-1")
                : Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"));
    }

    private void claimed() {
        Entries.enter(ledger, Entries.batch("one", job(JobOutcome.ISSUED)));
    }

    private void told(String sha256, AdviceStatus status) {
        ledger.settle(
                Entries.advice(sha256),
                book -> {
                    AdviceLine line = new AdviceLine(sha256, 2, DAY, Money.ZERO, "SB-1-STC");
                    ClaimState claim = book.byReference("SB-1-STC").get(0);
                    return book.match(
                            book.enter(line), line, claim, status, Money.ZERO, "reference", "", "");
                });
    }

    private CalendarDay closing() throws IOException {
        List<CalendarDay> closing = days(DAY, "closing SB-1-STC");
        assertThat(closing).hasSize(1);
        return closing.get(0);
    }

    @Test
    void aClaimIsToBeLodgedUntilItsLastDay() throws IOException {
        claimed();
        assertThat(closing().day()).isEqualTo(DAY.plusYears(1));
        assertThat(closing().title()).isEqualTo("Last day to create 14 STCs: SB-1");
        assertThat(closing().text()).isEqualTo("Claim SB-1-STC is not known to be lodged.");
        assertThat(closing().warnings()).containsExactly(60, 14);
        assertThat(closing().cancelled()).isFalse();
    }

    @Test
    void whatIsLodgedIsDoneAndWhatFailedIsNot() throws IOException {
        claimed();
        told("a", AdviceStatus.LODGED);
        assertThat(closing().cancelled()).isTrue();
        assertThat(closing().text()).isEqualTo("Lodged; nothing is to be done.");
        told("b", AdviceStatus.FAILED);
        assertThat(closing().cancelled()).isFalse();
    }

    private void withdraw() {
        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("SB-1", "called off")),
                        "",
                        "",
                        DAY,
                        Instant.EPOCH,
                        "test"));
    }

    @Test
    void whatIsWithdrawnCountsNoLongerUntilItIsClaimedAgain() throws IOException {
        claimed();
        withdraw();
        assertThat(closing().cancelled()).isTrue();
        assertThat(closing().text()).isEqualTo("The claim was withdrawn.");
        assertThat(days(DAY, "care ")).isNotEmpty().allMatch(CalendarDay::cancelled);
        Entries.enter(ledger, Entries.batch("two", job(JobOutcome.ISSUED)));
        assertThat(closing().cancelled()).isFalse();
        assertThat(days(DAY, "care ")).noneMatch(CalendarDay::cancelled);
    }

    @Test
    void whatIsOverStaysForNinetyDays() throws IOException {
        claimed();
        LocalDate last = DAY.plusYears(1);
        assertThat(dates(last.plusDays(90), "closing SB-1-STC")).containsExactly(last);
        assertThat(dates(last.plusDays(91), "closing SB-1-STC")).isEmpty();
    }

    @Test
    void aHeaterIsLookedOverEachOfFiveYearsOfWhichTheNextIsShown() throws IOException {
        claimed();
        assertThat(dates(DAY, "care SB-1")).containsExactly(DAY.plusYears(1));
        LocalDate inYearTwo = DAY.plusMonths(11);
        assertThat(dates(inYearTwo, "care SB-1")).containsExactly(DAY.plusYears(1));
        assertThat(dates(inYearTwo.plusDays(1), "care SB-1"))
                .containsExactly(DAY.plusYears(1), DAY.plusYears(2));
        assertThat(dates(DAY.plusYears(5), "care SB-1")).containsExactly(DAY.plusYears(5));
        assertThat(days(DAY, "care SB-1").get(0).text())
                .startsWith("Year 1 after the installation of 23 Nov 2026.");
    }

    private void manifest(String lastDays) throws IOException {
        Path batch = Files.createDirectories(office.packs().resolve("one"));
        Files.writeString(
                batch.resolve("manifest.json"),
                "{\"jobs\": [{\"job\": \"SB-1\", \"lastDays\": {" + lastDays + "}}]}");
    }

    @Test
    void aPaperThatWasNotOnFileIsAskedForTwoDaysBefore() throws IOException {
        claimed();
        manifest("\"Compliance certificate\": \"2026-11-28\", \"Create STCs\": \"2027-01-31\"");
        assertThat(days(DAY, "paper SB-1"))
                .singleElement()
                .satisfies(
                        d -> {
                            assertThat(d.title())
                                    .isEqualTo("Last day for Compliance certificate: SB-1");
                            assertThat(d.warnings()).containsExactly(2);
                            assertThat(d.day()).isEqualTo(LocalDate.of(2026, 11, 28));
                        });
        // That of the claim is the ledger's.
        assertThat(closing().day()).isEqualTo(DAY.plusYears(1));
    }

    @Test
    void aHeldJobsClosingDayIsThatOfItsBatch() throws IOException {
        Entries.enter(ledger, Entries.batch("one", job(JobOutcome.HELD)));
        manifest("\"Create STCs\": \"2027-01-31\"");
        assertThat(closing().day()).isEqualTo(LocalDate.of(2027, 1, 31));
        assertThat(closing().title()).isEqualTo("Last day to create STCs: SB-1, held");
        assertThat(closing().text()).contains("Nothing is claimed yet.", "findings of one");
    }

    private void heldSince() throws IOException {
        Entries.enter(ledger, Entries.batch("two", Entries.held("SB-1", SchemeName.STC)));
        Path batch = Files.createDirectories(office.packs().resolve("two"));
        Files.writeString(
                batch.resolve("manifest.json"),
                "{\"jobs\": [{\"job\": \"SB-1\", \"lastDays\": {\"Create STCs\": \"2027-01-31\"}}]}");
    }

    @Test
    void aHeldJobWhoseEarlierClaimTheBuyerHasKeepsThatClaimsDay() throws IOException {
        claimed();
        told("a", AdviceStatus.LODGED);
        heldSince();
        assertThat(closing().day()).isEqualTo(DAY.plusYears(1));
    }

    @Test
    void aHeldJobWhoseEarlierClaimFellAwayHasTheDayOfItsBatch() throws IOException {
        claimed();
        heldSince();
        assertThat(closing().day()).isEqualTo(LocalDate.of(2027, 1, 31));
        assertThat(closing().text()).startsWith("Nothing is claimed yet.");
        assertThat(closing().cancelled()).isFalse();
    }

    @Test
    void aLicenceEndsUnlessTheNextOneIsThere() throws IOException {
        table(
                "people.csv",
                "Wanda Wattle,03 7010 0101,plumbing,DEMO-1,VIC,,2024-07-01,2027-06-30",
                "Tilly Teatree,03 7010 0105,electrical,DEMO-2,VIC,,2024-01-01,2026-12-31",
                "Tilly Teatree,03 7010 0105,electrical,DEMO-3,VIC,,2027-01-01,2029-12-31");
        assertThat(days(DAY, "licence"))
                .extracting(d -> d.name() + " " + d.day() + " " + d.warnings())
                .containsExactly(
                        "licence VIC DEMO-1 2027-06-30 [60, 14]",
                        "licence VIC DEMO-3 2029-12-31 [60, 14]");
        assertThat(days(DAY, "licence").get(0).title())
                .isEqualTo("Licence ends: Wanda Wattle, plumbing, VIC");
    }

    @Test
    void anOfferEndsUnlessTheSameBuyerGoesOnForTheSameScheme() throws IOException {
        table(
                "offers.csv",
                "Kestrel Certificates,STC,2026-10-01,2026-10-31,36.90,plus,,,,,7,,,either,",
                "Kestrel Certificates,STC,2026-11-01,2026-11-30,37.20,plus,,,,,7,,,either,",
                "Kestrel Certificates,VEEC,2026-12-01,2026-12-31,68.50,plus,,,,,14,,VIC,either,",
                "Pipit and Wren,STC,2026-12-01,2026-12-15,36.60,plus,,,,,14,4;5,,either,",
                "Pipit and Wren,STC,2026-12-01,2026-12-15,36.45,plus,,,,,14,1;2;3,,either,");
        assertThat(days(DAY, "offer"))
                .extracting(d -> d.title() + " " + d.day() + " " + d.warnings())
                .containsExactly(
                        "Offer ends: Kestrel Certificates, STCs 2026-11-30 [7]",
                        "Offer ends: Pipit and Wren, STCs 2026-12-15 [7]",
                        "Offer ends: Kestrel Certificates, VEECs 2026-12-31 [7]");
    }

    @Test
    void rulesThatEndWithinThirteenMonthsAreShown() throws IOException {
        Path rules = Files.createDirectories(office.rules().orElseThrow().resolve("au"));
        Files.writeString(
                rules.resolve("public-holidays.csv"),
                "from,to,day,states,holiday,source,pinpoint,confidence,confirmed_on,note\n"
                        + "2026-01-01,2027-02-28,2026-12-24,VIC,A local day,how-we-read,test,derived,"
                        + "2026-11-01,made up\n");
        LocalDate last = LocalDate.of(2027, 2, 28);
        LocalDate early = LocalDate.of(2026, 1, 28);
        assertThat(ending(early)).containsExactly(last);
        assertThat(ending(early.minusDays(1))).isEmpty();
        assertThat(ending(last.plusDays(90))).containsExactly(last);
        assertThat(ending(last.plusDays(91))).isEmpty();
    }

    private List<LocalDate> ending(LocalDate today) throws IOException {
        Rulebook rules = Rulebook.load(office.rules());
        return CalendarDays.of(facts(today), new KnownDays(office), Optional.empty(), rules)
                .stream()
                .filter(d -> d.title().equals("Rule ends: au/public-holidays.csv for 2026-12-24"))
                .map(CalendarDay::day)
                .toList();
    }

    @Test
    void theEarliestIsFirst() throws IOException {
        claimed();
        assertThat(days(DAY, "")).extracting(CalendarDay::day).isSorted().hasSizeGreaterThan(10);
    }

    @Test
    void aManifestIsReadAnewWhenItChangedAndWhenTheClockWasPutBack() throws IOException {
        KnownDays known = new KnownDays(office);
        manifest("\"Paper\": \"2026-11-28\"");
        assertThat(known.of("one", DAY)).containsOnlyKeys("SB-1");
        assertThat(known.of("one", DAY.plusDays(6)).get("SB-1")).isNotEmpty();
        manifest("\"Another paper\": \"2026-11-28\"");
        assertThat(known.of("one", DAY.plusDays(6))).isEmpty();
        assertThat(known.of("one", DAY).get("SB-1")).containsOnlyKeys("Another paper");
        assertThat(known.of("two", DAY)).isEmpty();
    }
}
