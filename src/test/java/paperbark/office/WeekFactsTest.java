package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.job.Register;
import paperbark.ledger.AdviceLine;
import paperbark.ledger.AdviceStatus;
import paperbark.ledger.ClaimEntry;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Entries;
import paperbark.ledger.JobEntry;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerBench;
import paperbark.ledger.ScanBook;
import paperbark.output.WeekView;
import paperbark.output.calendar.CalendarDay;
import paperbark.output.index.WeekPage;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What stands on the page of the week. */
class WeekFactsTest {
    /** A Monday; claims are due a week later and to be lodged within a year. */
    private static final LocalDate DAY = Entries.DAY;

    private static final LocalDate LAST = DAY.plusYears(1);

    @TempDir private Path folder;

    private Office office;
    private Ledger ledger;

    @BeforeEach
    void twoClaims() throws IOException {
        office = Office.in(folder);
        Ledger.create(office.ledger(), Instant.EPOCH);
        ledger = Ledger.open(office.ledger());
        Entries.enter(
                ledger,
                Entries.batch(
                        "one",
                        Entries.job("SB-1", claim("T-100", "504.00")),
                        Entries.job("SB-2", claim("T-200", "36.10"))));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static ClaimEntry claim(String serial, String expected) {
        return Entries.claim(SchemeName.STC, serial, expected);
    }

    private WeekView week(LocalDate today, CalendarDay... days) throws IOException {
        return WeekFacts.of(
                office,
                new LedgerFacts(ledger, today),
                Optional.of(Register.TABLES),
                new WeekFacts.Jobs(List.of(days), new FiledJobs(office), Optional.empty()),
                "test");
    }

    @Test
    void countsWhatAListOnPaperHasNoRoomFor() throws IOException {
        JobEntry[] jobs =
                IntStream.range(0, 300)
                        .mapToObj(i -> Entries.job("SC-" + i, claim("T-3" + i, "36.10")))
                        .toArray(JobEntry[]::new);
        Entries.enter(ledger, Entries.batch("two", jobs));

        WeekView week = week(LAST);

        assertThat(week.lodge()).hasSize(200);
        assertThat(week.further()).isEqualTo(new WeekView.Further(102, 0, 0));
        assertThat(week.inShort()).startsWith("302 to lodge, 0 failed, ");
        assertThat(WeekPage.of(week)).contains("And 102 more, which owed lists.");
    }

    private void told(String key, String claim, AdviceStatus status, String amount) {
        ledger.settle(
                Entries.advice(key),
                book -> {
                    Money money = Money.of(amount);
                    AdviceLine line = new AdviceLine(key, 2, DAY, money, claim);
                    ClaimState state = book.byReference(claim).get(0);
                    return book.match(
                            book.enter(line), line, state, status, money, "reference", "", "");
                });
    }

    @ParameterizedTest
    @CsvSource({"2026-11-22, 2026-11-16", "2026-11-23, 2026-11-23", "2026-11-29, 2026-11-23"})
    void aWeekBeginsOnMonday(LocalDate day, LocalDate monday) {
        assertThat(WeekFacts.monday(day)).isEqualTo(monday);
        assertThat(WeekFacts.week(LocalDate.of(2026, 11, 25)))
                .isEqualTo("23 Nov 2026 to 29 Nov 2026");
    }

    @ParameterizedTest
    @CsvSource({
        "-59, '', 59 days left, ''",
        "-60, '', '', ''",
        "-7, '', 7 days left, ''",
        "-1, 1 day left, '', ''",
        "0, today, '', ''",
        "1, '', '', 1 day ago",
        "3, '', '', 3 days ago"
    })
    void aClaimIsToBeLodgedThisWeekOrSoonOrIsTooLate(
            int daysAfterLast, String thisWeek, String soon, String tooLate) throws IOException {
        // The last day is a Tuesday.
        WeekView week = week(LAST.plusDays(daysAfterLast));
        assertThat(week.lodge()).extracting(WeekView.Closing::left).containsOnly(one(thisWeek));
        assertThat(week.soon()).extracting(WeekView.Closing::left).containsOnly(one(soon));
        assertThat(week.tooLate().newest())
                .extracting(WeekView.Closing::left)
                .containsOnly(one(tooLate));
    }

    private static String[] one(String text) {
        return text.isEmpty() ? new String[0] : new String[] {text};
    }

    @Test
    void aClosingTellsWhatOfWhomUntilWhen() throws IOException {
        WeekView.Closing closing = week(LAST).lodge().get(0);
        assertThat(closing.claim()).isEqualTo("SB-1-STC");
        assertThat(closing.what()).isEqualTo("14 STCs");
        assertThat(closing.buyer()).isEqualTo("Kestrel Certificates");
        assertThat(closing.phone()).isPresent();
        assertThat(closing.day()).isEqualTo("23 Nov 2027");
    }

    @Test
    void whatFailedIsToldApartFromWhatCloses() throws IOException {
        told("a", "SB-1-STC", AdviceStatus.FAILED, "0.00");
        WeekView week = week(LAST);
        assertThat(week.failed()).extracting(WeekView.Closing::claim).containsExactly("SB-1-STC");
        assertThat(week.lodge()).extracting(WeekView.Closing::claim).containsExactly("SB-2-STC");
        assertThat(week(LAST.plusDays(1)).tooLate().newest())
                .extracting(WeekView.Closing::claim)
                .containsExactly("SB-1-STC", "SB-2-STC");
    }

    @Test
    void ofManyClaimsThatAreTooLateTheNewestAreListed() throws IOException {
        Entries.enter(ledger, LedgerBench.batch(0));
        WeekView.TooLate tooLate = week(LAST.plusDays(1)).tooLate();
        assertThat(tooLate.count()).isEqualTo(82);
        assertThat(tooLate.newest())
                .hasSize(40)
                .extracting(WeekView.Closing::claim)
                .endsWith("SB-1-STC", "SB-2-STC");
    }

    @Test
    void moneyIsOverdueFromTheDayAfterItWasDue() throws IOException {
        assertThat(week(DAY.plusDays(7)).overdue()).isEmpty();
        assertThat(week(DAY.plusDays(7)).total()).isEqualTo("$0.00");
        WeekView week = week(DAY.plusDays(8));
        assertThat(week.total()).isEqualTo("$540.10");
        assertThat(week.overdue())
                .singleElement()
                .satisfies(
                        o -> {
                            assertThat(o.buyer()).isEqualTo("Kestrel Certificates");
                            assertThat(o.amount()).isEqualTo("$540.10");
                            assertThat(o.claims()).isEqualTo(2);
                            assertThat(o.oldest()).isEqualTo("SB-1-STC, due 30 Nov 2026, 1 day");
                            assertThat(o.phone()).isPresent();
                        });
        assertThat(week(DAY.plusDays(9)).overdue().get(0).oldest()).endsWith(", 2 days");
    }

    private static CalendarDay day(String name, LocalDate day, boolean cancelled) {
        return new CalendarDay(name, day, "Title of " + name, "", List.of(), cancelled);
    }

    @Test
    void papersAreAskedForUntilSundayAndForSixtyDaysBack() throws IOException {
        LocalDate sunday = DAY.plusDays(6);
        assertThat(
                        week(
                                        DAY.plusDays(2),
                                        day("paper a", sunday, false),
                                        day("paper b", sunday.plusDays(1), false),
                                        day("paper c", DAY.plusDays(2).minusDays(60), false),
                                        day("paper d", DAY.plusDays(2).minusDays(61), false),
                                        day("paper e", DAY, true),
                                        day("licence f", DAY.plusDays(3), false))
                                .papers())
                .extracting(WeekView.Line::what)
                .containsExactly("Title of paper a", "Title of paper c");
    }

    @Test
    void licencesOffersAndRulesAreToldForSixtyDaysAhead() throws IOException {
        assertThat(
                        week(
                                        DAY,
                                        day("licence a", DAY, false),
                                        day("offer b", DAY.plusDays(60), false),
                                        day("rule c", DAY.plusDays(61), false),
                                        day("rule d", DAY.minusDays(1), false),
                                        day("care e", DAY, false))
                                .ending())
                .extracting(l -> l.what() + ", " + l.day() + ", " + l.left())
                .containsExactly(
                        "Title of licence a, 23 Nov 2026, today",
                        "Title of offer b, 22 Jan 2027, 60 days left");
    }

    @Test
    void aBatchWithHeldJobsIsLinkedWhereItsPageIsThere() throws IOException {
        Files.writeString(office.packs().resolve(".paperbark-place"), "here\n");
        assertThat(week(DAY).held()).isEmpty();
        Entries.enter(ledger, Entries.batch("two", Entries.held("SB-3")));
        assertThat(week(DAY).held()).containsExactly(new WeekView.Held("two", "", 1));
        Files.createDirectories(office.packs().resolve("two"));
        Files.createFile(office.packs().resolve("two/index.html"));
        assertThat(week(DAY).held()).containsExactly(new WeekView.Held("two", "index.html", 1));
    }

    @Test
    void theNewestCopyOfTheLedgerIsTold() throws IOException {
        assertThat(week(DAY).machine().get(0).what()).matches("Disk: \\d+ MB free.*");
        assertThat(week(DAY).machine().get(1).what()).startsWith("No copy of the ledger yet");
        Files.createDirectories(office.backups());
        Files.createFile(office.backups().resolve("paperbark-2026-11-22.db"));
        assertThat(week(DAY).machine().get(1))
                .isEqualTo(
                        new WeekView.Line(
                                "1 copy of the ledger, the newest of", "22 Nov 2026", "1 day ago"));
        Files.createFile(office.backups().resolve("paperbark-2026-11-23.db"));
        assertThat(week(DAY).machine().get(1).what()).startsWith("2 copies of the ledger");
    }

    @Test
    void assignmentsThatAreNotBackAreCountedOnceAnythingWasScanned() throws IOException {
        assertThat(week(DAY).signed()).isEmpty();
        JobEntry job = Entries.job("SB-4", claim("T-400", "10.00"));
        Entries.enter(ledger, Entries.batch("two", Entries.printing("stc", job)));
        new ScanBook(ledger).enter(Entries.scan("1", Entries.page(1, "SB-1", 1, 1, 0)));
        WeekView.Signed signed = week(DAY).signed().orElseThrow();
        assertThat(signed.ready()).isZero();
        assertThat(signed.waiting()).isOne();
        assertThat(signed.first())
                .singleElement()
                .satisfies(
                        n -> {
                            assertThat(n.claim()).isEqualTo("SB-4-STC");
                            assertThat(n.batch()).isEqualTo("two");
                            assertThat(n.came()).isEqualTo("not back yet");
                            assertThat(n.day()).isEqualTo("23 Nov 2027");
                            assertThat(n.left()).isEqualTo("365 days left");
                        });
    }
}
