package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.ledger.Ledger;
import paperbark.office.Offices;

/** What a person says of claims, and whether whatever speaks of the same money agrees with it. */
class SaidByHandTest {
    @TempDir private Path office;
    @TempDir private Path copies;

    @BeforeEach
    void twoJobsAreClaimed() throws IOException {
        Offices.make(office);
        assertThat(prepare("2026-11-23", "week", Offices.register(1, 2)).exitCode()).isZero();
    }

    private Program.Run run(String day, String... words) {
        return Program.run(Instant.parse(day + "T02:00:00Z"), office, words);
    }

    private Program.Run prepare(String day, String name, String rows) throws IOException {
        Path register = office.resolve(name + ".csv");
        Files.writeString(register, rows);
        return run(
                day,
                "prepare",
                register.toString(),
                "--tables",
                "tables",
                "--ledger",
                "paperbark.db",
                "--out",
                "packs",
                "--csv");
    }

    private Program.Run settle(String name, String lines) throws IOException {
        Files.writeString(office.resolve(name), lines);
        return run("2026-12-20", "settle", name);
    }

    private String owed(String day) {
        return run(day, "owed").out();
    }

    private String quarters() {
        return run("2026-12-20", "quarters").out();
    }

    /** What the summary of the next batch says of claims before it. */
    private String nextSummary() throws IOException {
        prepare("2026-12-20", "next", Offices.register(3));
        try (Stream<Path> files = Files.walk(office.resolve("packs/2026-12-20-next"))) {
            StringBuilder all = new StringBuilder();
            for (Path csv : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
                all.append(Files.readString(csv));
            }
            return all.toString();
        }
    }

    @Test
    void whatIsLodgedIsLodgedEverywhereAndCanBeUnsaid() throws IOException {
        String late = "2027-11-01";
        assertThat(owed(late)).containsSubsequence("Not lodged", "J-1-STC", "J-2-STC");

        Program.Run said = run("2026-11-30", "lodged", "J-1", "--on", "27/11/2026");
        assertThat(said.exitCode()).as(said.err()).isZero();
        assertThat(said.out())
                .contains("J-1-STC", ": lodged, $0.00 received, ", "Entered:      advice-2");
        assertThat(owed(late).split("Not lodged")[1]).contains("J-2-STC").doesNotContain("J-1-STC");
        assertThat(run("2026-11-30", "lodged", "J-1-STC"))
                .returns(12, Program.Run::exitCode)
                .extracting(Program.Run::out)
                .asString()
                .contains("J-1-STC is known to be lodged already.");
        assertThat(nextSummary())
                .containsPattern("J-1,.*,lodged")
                .containsPattern("J-2,.*,not known to be lodged");

        assertThat(run("2026-12-20", "unsay", "advice-2").exitCode()).isZero();
        assertThat(owed(late).split("Not lodged")[1]).contains("J-1-STC", "J-2-STC");
        assertThat(run("2026-12-20", "unsay", "advice-2").exitCode()).isEqualTo(12);
        assertThat(run("2026-12-20", "lodged", "J-1").exitCode()).isZero();
        assertThat(owed(late).split("Not lodged")[1]).doesNotContain("J-1-STC");
    }

    @Test
    void aDayBehindTheLastOneIsEnteredAndTold() {
        String onItsLastDay = run("2027-11-16", "lodged", "J-1-STC").out();
        assertThat(onItsLastDay).contains(": lodged, ").doesNotContain("Look at");
        assertThat(run("2027-11-17", "lodged", "J-2-STC").out())
                .contains(
                        "J-2-STC, ",
                        ": lodged, ",
                        "Look at J-2-STC: its last day, 16 Nov 2027, was over on 17 Nov 2027. The claim is entered as lodged all the same.");
        assertThat(run("2027-11-17", "lodged", "J-2-STC").out()).doesNotContain("Look at");
    }

    @Test
    void whatFailedIsToBeLodgedAgainUntilItsLastDay() throws IOException {
        Files.writeString(
                office.resolve("failed.csv"),
                "Claim reference,Paid on,Status\nJ-1-STC,01/12/2026,failed\n");
        Program.Run inTime = run("2027-11-16", "settle", "failed.csv");
        assertThat(inTime.out() + inTime.err())
                .contains("let the buyer lodge it again by 16 Nov 2027.");
        Files.writeString(
                office.resolve("more.csv"),
                "Claim reference,Paid on,Status\nJ-2-STC,01/12/2026,failed\n");
        Program.Run tooLate = run("2027-11-17", "settle", "more.csv");
        assertThat(tooLate.out() + tooLate.err())
                .contains("lodged again by its last day, 16 Nov 2027; now it can be no longer.")
                .doesNotContain("let the buyer lodge it again");
    }

    @Test
    void whatIsPaidIsPaidEverywhereAndNeverWasOnceItIsUnsaid() {
        String before = quarters();
        String owedBefore = owed("2026-12-20");

        assertThat(run("2026-12-01", "paid", "J-1-STC", "200.00").out())
                .contains("$200.00 received, ", " still to come");
        assertThat(quarters()).contains("$200.00");
        assertThat(owed("2026-12-20")).isNotEqualTo(owedBefore).contains("J-1-STC");
        // What is asked of a day before the money came is answered as of that day.
        assertThat(run("2026-12-20", "owed", "--as-of", "2026-11-30").out())
                .doesNotContain("200.00");

        assertThat(run("2026-12-15", "unsay", "advice-2").exitCode()).isZero();
        assertThat(quarters()).isEqualTo(before);
        assertThat(owed("2026-12-20")).isEqualTo(owedBefore);
    }

    /** What a batch says that is prepared in a copy of the office, by file. */
    private Map<String, String> nextBatch(String register) throws IOException {
        Path copy = Files.createTempDirectory(copies, "office");
        Offices.copy(office, copy);
        Files.writeString(copy.resolve("next.csv"), register);
        Program.Run run =
                Program.run(
                        Instant.parse("2026-12-20T02:00:00Z"),
                        copy,
                        "prepare",
                        "next.csv",
                        "--tables",
                        "tables",
                        "--ledger",
                        "paperbark.db",
                        "--out",
                        "packs",
                        "--csv");
        assertThat(run.exitCode()).as(run.out() + run.err()).isIn(0, 10);
        Map<String, String> said = new TreeMap<>();
        Path batch = copy.resolve("packs/2026-12-20-next");
        try (Stream<Path> files = Files.walk(batch)) {
            for (Path file :
                    files.filter(f -> f.toString().matches(".*[.](csv|journal|html)")).toList()) {
                said.put(batch.relativize(file).toString(), Files.readString(file));
            }
        }
        return said;
    }

    private String calendar() throws IOException {
        assertThat(run("2026-12-20", "week", ".").exitCode()).isZero();
        // How often it was made, and when, is of the file and not of its days.
        return Files.readString(office.resolve("calendar.ics"))
                .replaceAll("(?m)^(SEQUENCE|DTSTAMP|LAST-MODIFIED):.*\\R", "");
    }

    private String week() throws IOException {
        assertThat(run("2026-12-20", "week", ".").exitCode()).isZero();
        return Files.readString(office.resolve("week.html")).replaceAll("Disk: [^<]*", "");
    }

    @Test
    void theNextBatchIsTheSameWhereSomethingWasUnsaidAsWhereItWasNeverSaid() throws IOException {
        String register = Offices.register(3);
        Map<String, String> before = nextBatch(register);
        String days = calendar();
        String page = week();
        assertThat(before).containsKeys("index.html", "journal.csv", "accounts.journal");

        run("2026-12-01", "lodged", "J-1");
        run("2026-12-01", "paid", "J-2-STC", "200.00");
        Map<String, String> said = nextBatch(register);
        // What was received is of the ledger's sheets; GST, journal and index are of the jobs.
        assertThat(changed(before, said))
                .isNotEmpty()
                .allMatch(file -> file.matches("summary-csv/.*(received|debtors).*"));
        assertThat(calendar()).isNotEqualTo(days);
        assertThat(week()).isNotEqualTo(page);

        run("2026-12-15", "unsay", "advice-2");
        run("2026-12-15", "unsay", "advice-3");
        assertThat(changed(before, nextBatch(register))).isEmpty();
        assertThat(calendar()).isEqualTo(days);
        assertThat(week()).isEqualTo(page);
    }

    private static List<String> changed(Map<String, String> before, Map<String, String> after) {
        assertThat(after).containsOnlyKeys(before.keySet());
        return before.keySet().stream()
                .filter(file -> !before.get(file).equals(after.get(file)))
                .toList();
    }

    @Test
    void aChangedJobIsStoppedWhileItsClaimIsWithTheBuyerAsAPersonSaid() throws IOException {
        String register = Offices.register(1).replace("4512101", "4512333");
        assertThat(nextBatch(register).get("index.html")).doesNotContain("claim-under-way");
        run("2026-12-01", "lodged", "J-1");
        assertThat(nextBatch(register).get("index.html"))
                .contains(
                        "claim-under-way",
                        "The claim J-1-STC is with the buyer",
                        "; the buyer has: STC assignment, to be agreed on with them");
        run("2026-12-01", "unsay", "advice-2");
        assertThat(nextBatch(register).get("index.html")).doesNotContain("claim-under-way");
        run("2026-12-01", "paid", "J-1-STC", "200.00");
        assertThat(nextBatch(register).get("index.html"))
                .contains("The claim J-1-STC was paid $200.00");
        run("2026-12-01", "unsay", "advice-4");
        assertThat(nextBatch(register).get("index.html")).doesNotContain("claim-under-way");
    }

    @Test
    void anAdviceThatTellsAPaymentThatWasEnteredByHandChangesNothing() throws IOException {
        run("2026-12-01", "paid", "J-1-STC", "200.00");
        String headings = "Claim reference,Paid on,Amount\n";

        Program.Run sameDay = settle("same.csv", headings + "J-1-STC,1/12/2026,200.00\n");
        assertThat(sameDay.out()).contains("seen before:  1");
        Program.Run otherDay = settle("other.csv", headings + "J-1-STC,3/12/2026,200.00\n");
        assertThat(otherDay.out()).contains("duplicate:    1", "entered by hand, on 1 Dec 2026");
        assertThat(quarters()).contains("$200.00").doesNotContain("$400.00");

        // One that lies further off is another payment.
        assertThat(settle("later.csv", headings + "J-1-STC,16/12/2026,200.00\n").out())
                .contains("short:        1");
        assertThat(quarters()).contains("$400.00");
    }

    @Test
    void aLineOfADayToComeCountsNowhereUntilItIsSettledOnThatDay() throws IOException {
        String lines = "Claim reference,Paid on,Amount\nJ-1-STC,28/12/2026,200.00\n";
        String register = Offices.register(1).replace("4512101", "4512333");
        Map<String, String> before = nextBatch(register);
        String days = calendar();
        String page = week();
        String quarters = quarters();
        String owed = owed("2027-01-10");

        Program.Run early = settle("early.csv", lines);
        assertThat(early.exitCode()).isEqualTo(10);
        assertThat(early.out())
                .contains(
                        "28 Dec 2026, which has not come yet; it was not taken in",
                        "to come:      1");
        assertThat(changed(before, nextBatch(register))).isEmpty();
        assertThat(calendar()).isEqualTo(days);
        assertThat(week()).isEqualTo(page);
        assertThat(quarters()).isEqualTo(quarters);
        assertThat(owed("2027-01-10")).isEqualTo(owed);

        assertThat(run("2026-12-28", "settle", "early.csv").out()).contains("short:        1");
        assertThat(owed("2027-01-10")).isNotEqualTo(owed);
    }

    @Test
    void theSamePaymentTwiceIsAskedFor() {
        run("2026-12-01", "paid", "J-1-STC", "100.00");
        assertThat(run("2026-12-01", "paid", "J-1", "$100").exitCode()).isEqualTo(12);
        assertThat(run("2026-12-01", "paid", "J-1", "100", "--again").out())
                .contains("$200.00 received");
    }

    @Test
    void aFailedClaimThatIsLodgedAgainIsExpectedAgain() throws IOException {
        settle("failed.csv", "Claim reference,Paid on,Status\nJ-1-STC,1/12/2026,failed\n");
        assertThat(owed("2026-12-20")).containsSubsequence("Failed,", "J-1-STC", "Not lodged");

        assertThat(run("2026-12-20", "lodged", "J-1").out()).contains(": lodged, $0.00 received");
        assertThat(owed("2026-12-20").split("Failed,")[1]).doesNotContain("J-1-STC");
        assertThat(owed("2026-12-20").split("Failed,")[0]).contains("J-1-STC");
    }

    private static final String REFUSED =
            """
            lodged J-9 | The ledger knows no claim and no job J-9.
            lodged J-1 J-9 | The ledger knows no claim and no job J-9.
            lodged J-1 --on 2026-12-02 | 2 Dec 2026 has not come yet.
            paid J-1 10 --on 2026-11-15 | installation of 16 Nov 2026, after 15 Nov 2026
            paid J-1 9999 | is to come for J-1-STC, and $9,999.00 is more.
            paid J-1 0 | is no amount that can have come
            paid J-1 1.234 | is no amount that can have come
            lodged J-7 | Job J-7 is held, and nothing is claimed for it.
            lodged J-8 | Job J-8 is only booked, and nothing is claimed for it.
            paid J-2 10 | J-2 was withdrawn, so that nothing is to be lodged or paid for it.
            unsay advice-9 | advice-9 is no entry that lodged or paid made.
            """;

    @Test
    void whatCannotBeIsRefusedWithASentenceAndNothingIsEntered() throws IOException {
        // The serial of J-7 is that of J-1.
        prepare(
                "2026-11-24",
                "others",
                Offices.register(7, 8)
                        .replace("2610040004512107", "2610040004512101")
                        .replace("J-8,installed", "J-8,booked"));
        run("2026-11-24", "withdraw", "J-2", "--because", "called off");
        String seal = seal();
        for (String line : REFUSED.split("\n")) {
            String[] cells = line.split(" \\| ");
            Program.Run refused = run("2026-12-01", cells[0].split(" "));
            assertThat(refused.exitCode()).as(refused.out()).isEqualTo(2);
            assertThat(refused.err()).contains(cells[1]);
        }
        assertThat(seal()).isEqualTo(seal);
    }

    @Test
    void whatIsUnsaidOfAWithdrawnClaimLeavesItWithdrawn() {
        run("2026-12-01", "lodged", "J-1");
        run("2026-12-01", "paid", "J-1-STC", "200.00");
        run("2026-12-02", "withdraw", "J-1", "--because", "called off");
        Program.Run unsaid = run("2026-12-03", "unsay", "advice-3");
        assertThat(unsaid.exitCode()).as(unsaid.out() + unsaid.err()).isZero();
        assertThat(unsaid.out())
                .contains("J-1-STC", ": withdrawn, $0.00 received")
                .doesNotContain("lodged", "closes");
    }

    private String seal() {
        try (Ledger ledger = Ledger.open(office.resolve("paperbark.db"))) {
            return ledger.records().lastSeal();
        }
    }

    @Test
    void whatWasSaidIsInALedgerThatIsMadeAnew() throws IOException {
        run("2026-12-01", "paid", "J-1-STC", "200.00");
        run("2026-12-01", "lodged", "J-2");
        run("2026-12-02", "unsay", "advice-3");
        String owed = owed("2027-11-01");
        Files.delete(office.resolve("paperbark.db"));

        assertThat(run("2026-12-20", "ledger-rebuild", ".").exitCode()).isZero();

        assertThat(owed("2027-11-01")).isEqualTo(owed);
    }
}
