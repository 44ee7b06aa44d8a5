package paperbark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.SampleWeek;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.office.Offices;
import paperbark.outside.Outside;
import paperbark.value.Money;

/**
 * The sample week with a ledger, through the whole program. Each test begins with a copy of what
 * was there once the week had been prepared.
 */
class LedgerRunTest {
    private static final Path SAMPLES = Path.of("input-samples").toAbsolutePath();
    private static final String TABLES = SAMPLES.resolve("tables").toString();
    private static final LocalDate LATER = LocalDate.of(2027, 6, 30);

    @TempDir private static Path afterTheWeek;

    @TempDir private Path directory;

    @BeforeAll
    static void prepareTheWeek() {
        assertThat(Program.run(afterTheWeek, "ledger-new").exitCode()).isZero();
        assertThat(prepareIn(afterTheWeek, SAMPLES.resolve("week-47.csv")).exitCode())
                .isEqualTo(10);
    }

    @BeforeEach
    void takeACopy() throws IOException {
        Offices.copy(afterTheWeek, directory);
    }

    private Program.Run run(String... words) {
        return Program.run(directory, words);
    }

    /** Settles the advice when its money has come. */
    private Program.Run settle() {
        return Program.run(
                Instant.parse("2026-12-09T02:00:00Z"), directory, "settle", "advice.csv");
    }

    private Program.Run prepare(Path register, String... more) {
        return prepareIn(directory, register, more);
    }

    private static Program.Run prepareIn(Path directory, Path register, String... more) {
        List<String> words =
                Stream.concat(
                                Stream.of(
                                        "prepare",
                                        register.toString(),
                                        "--tables",
                                        TABLES,
                                        "--ledger",
                                        "paperbark.db",
                                        "--out",
                                        "packs"),
                                Stream.of(more))
                        .toList();
        return Program.run(directory, words.toArray(String[]::new));
    }

    private List<ClaimState> claims() {
        try (Ledger ledger = Ledger.open(directory.resolve("paperbark.db"))) {
            ledger.verify();
            return ledger.claims(LATER);
        }
    }

    private static Money sum(Stream<Money> amounts) {
        return amounts.reduce(Money.ZERO, Money::plus);
    }

    @Test
    void theSameWeekInAnotherFormatClaimsNothingTwice() {
        List<ClaimState> first = claims();
        assertThat(first).hasSizeGreaterThan(20);
        Program.Run again = prepare(SAMPLES.resolve("week-47.xlsx"));
        assertThat(again.out()).contains("Jobs:         13, held: 13");
        assertThat(claims()).isEqualTo(first);
    }

    @Test
    void aMendedWeekCompletesJustWhatWasMissing() throws IOException {
        List<ClaimState> before = claims();
        Path rest = directory.resolve("rest.csv");
        String week = Files.readString(SAMPLES.resolve("week-47.csv"));
        Files.writeString(rest, week.replace("D270A", "D270-A"));
        Program.Run run = prepare(rest, "--as-of", "2026-11-24");
        assertThat(run.out()).contains("Jobs:         13, held: 12");
        assertThat(claims())
                .containsAll(before)
                .filteredOn(c -> !before.contains(c))
                .isNotEmpty()
                .allMatch(c -> c.job().equals("SB-1115"));
    }

    @Test
    void aBatchThatWasCutShortBeforeItsFolderAppearedIsPublishedByTheNextRun() throws IOException {
        Path packs = directory.resolve("packs");
        Path batch = packs.resolve("2026-11-23-week-47");
        Files.move(batch, packs.resolve(".hidden"));
        ledger(
                "UPDATE progress SET state = 'committed', staged = '"
                        + packs.resolve(".hidden")
                        + "'");
        Path nothingNew = directory.resolve("done.csv");
        Files.writeString(nothingNew, SampleWeek.only("SB-1101"));
        Program.Run run = prepare(nothingNew, "--explain");
        assertThat(run.exitCode()).as(run.out()).isEqualTo(12);
        assertThat(run.out())
                .contains(
                        "Left out because nothing that the ledger compares changed since batch",
                        "SB-1101");
        assertThat(batch.resolve("manifest.json")).isRegularFile();
        assertThat(packs.resolve(".hidden")).doesNotExist();
    }

    @Test
    void aBatchThatWaitsInAnotherFolderIsLeftToThatFoldersNextRun() throws IOException {
        Path batch = directory.resolve("packs/2026-11-23-week-47");
        Path elsewhere = Files.createDirectories(directory.resolve("elsewhere"));
        Files.move(batch, elsewhere.resolve(".hidden"));
        Files.move(
                directory.resolve("packs/.paperbark-place"), elsewhere.resolve(".paperbark-place"));
        ledger("UPDATE progress SET state = 'committed', staged = '.hidden'");
        Path done = Files.writeString(directory.resolve("done.csv"), SampleWeek.only("SB-1101"));
        Program.Run here = prepare(done);
        assertThat(here.out() + here.err()).doesNotContain("batch-lost");
        assertThat(elsewhere.resolve(".hidden")).exists();
        Program.Run there =
                run(
                        "prepare",
                        done.toString(),
                        "--tables",
                        TABLES,
                        "--ledger",
                        "paperbark.db",
                        "--out",
                        "elsewhere");
        assertThat(there.out() + there.err()).doesNotContain("batch-lost");
        assertThat(elsewhere.resolve("2026-11-23-week-47/manifest.json")).exists();
    }

    private void ledger(String statement) {
        try (var connection =
                        java.sql.DriverManager.getConnection(
                                "jdbc:sqlite:" + directory.resolve("paperbark.db"));
                var run = connection.createStatement()) {
            run.execute(statement);
        } catch (java.sql.SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void twoOutputFoldersOfOneLedgerShareNoNameOfABatch() throws IOException {
        Path sameName = Files.createDirectories(directory.resolve("mended")).resolve("week-47.csv");
        Files.writeString(
                sameName,
                Files.readString(SAMPLES.resolve("week-47.csv")).replace("D270A", "D270-A"));
        Program.Run run =
                run(
                        "prepare",
                        sameName.toString(),
                        "--tables",
                        TABLES,
                        "--ledger",
                        "paperbark.db",
                        "--out",
                        "elsewhere");
        assertThat(run.exitCode()).as(run.err()).isEqualTo(10);
        assertThat(directory.resolve("elsewhere/2026-11-23-week-47-2/manifest.json"))
                .isRegularFile();
        assertThat(directory.resolve("elsewhere/2026-11-23-week-47")).doesNotExist();
        assertThat(claims())
                .extracting(ClaimState::batch)
                .contains("2026-11-23-week-47", "2026-11-23-week-47-2");
    }

    @Test
    void aLedgerThatAnotherProgramWritesInEndsWithTwenty() throws Exception {
        Path ledger = directory.resolve("paperbark.db");
        Path one = Files.writeString(directory.resolve("one.csv"), SampleWeek.only("SB-1101"));
        try (var other = java.sql.DriverManager.getConnection("jdbc:sqlite:" + ledger);
                var statement = other.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            Program.Run run = prepare(one, "--again");
            assertThat(run.exitCode()).isEqualTo(20);
            assertThat(run.err().lines())
                    .containsExactly(
                            "Another program is writing in the ledger. Wait until it has ended.",
                            "Another program is at work in the same place; nothing was done.");
            statement.execute("ROLLBACK");
        }
        assertThat(directory.resolve("packs/2026-11-23-one")).doesNotExist();
        assertThat(prepare(one, "--again").exitCode()).isZero();
    }

    @Test
    void jobsThatAreDoneArePreparedOnceMoreOnRequest() throws IOException {
        List<ClaimState> before = claims();
        assertThat(before).extracting(ClaimState::job).contains("SB-1101", "SB-1102");
        Path done = directory.resolve("done.csv");
        Files.writeString(done, SampleWeek.only("SB-1101", "SB-1102"));
        Program.Run again = prepare(done, "--again", "--as-of", "2026-11-24");
        assertThat(again.out()).contains("Jobs:         2, held: 0");
        assertThat(claims()).hasSameSizeAs(before);
    }

    @Test
    void aLedgerThatWasChangedStopsEverything() {
        ledger("UPDATE claim SET expected_cents = expected_cents + 100 WHERE id = 3");
        Program.Run run = prepare(SAMPLES.resolve("week-47.xlsx"));
        assertThat(run.exitCode()).isEqualTo(21);
        assertThat(run.err()).contains("not as it was written", "2026-11-23-week-47");
        assertThat(directory.resolve("packs/2026-11-23-week-47-2")).doesNotExist();
    }

    @ParameterizedTest
    @ValueSource(strings = {"owed", "quarters"})
    void whatCannotEvenBeReadIsToldByTheProof(String command) {
        ledger("UPDATE claim SET due = 'soon' WHERE id = 3");
        Program.Run run = run(command, "--as-of", "2026-11-24");
        assertThat(run.exitCode()).isEqualTo(21);
        assertThat(run.err()).contains("not as it was written", "2026-11-23-week-47");
        assertThat(run.out()).doesNotContain("Total", "Oct to Dec");
    }

    @Test
    void anAdviceIsSettledAndWhatIsOwedGoesDown() throws IOException {
        List<ClaimState> claims = claims();
        List<ClaimState> paid = claims.subList(0, 5);
        Files.writeString(
                directory.resolve("advice.csv"),
                paid.stream()
                        .map(c -> c.reference() + ",8/12/2026," + c.expected().amount())
                        .collect(Collectors.joining("\n", "Your ref,Date,Amount paid\n", "\n")));
        Program.Run settled = settle();
        assertThat(settled.exitCode()).as(settled.out() + settled.err()).isZero();
        assertThat(settled.out()).contains("matched:      5");
        assertThat(directory.resolve("advice-settled.xlsx")).isRegularFile();
        assertThat(directory.resolve("advice-settled.csv"))
                .content()
                .contains(paid.get(0).reference() + "," + paid.get(0).job());
        Money left =
                sum(claims.stream().map(ClaimState::expected))
                        .minus(sum(paid.stream().map(ClaimState::expected)));
        assertThat(run("owed", "--as-of", "2027-02-01").out())
                .contains("Owed on 1 Feb 2027", left.toString(), "Overdue, longest first")
                .contains(claims.get(6).reference())
                .doesNotContain(paid.get(0).reference() + " ");
        assertThat(run("quarters", "--as-of", "2026-12-31").out())
                .contains(
                        "Oct to Dec 2026", sum(paid.stream().map(ClaimState::expected)).toString());
        Program.Run twice = settle();
        assertThat(twice.exitCode()).isEqualTo(12);
        assertThat(twice.out()).contains("Every line was taken in before", "seen before:  5");
    }

    @Test
    void theSampleAdviceIsSettledAsTheReadmeSays() throws IOException {
        Files.copy(SAMPLES.resolve("advice-pipit-and-wren.csv"), directory.resolve("advice.csv"));
        Program.Run run = settle();
        assertThat(run.out().lines())
                .contains(
                        "matched:      4",
                        "short:        1",
                        "lodged:       1",
                        "failed:       1",
                        "unknown:      1");
        assertThat(run.out()).contains("payment-short", "claim-failed", "payment-unmatched");
        assertThat(run.exitCode()).isEqualTo(10);
        assertThat(run.out()).contains("some lines need a person");
        String owed = run("owed", "--as-of", "2027-02-01").out();
        assertThat(owed.substring(owed.indexOf("Failed, nothing owed"), owed.indexOf("Not lodged")))
                .contains("closes")
                .doesNotContain("none");
    }

    @Test
    void anAdviceWhoseHeadingsAreNotUnderstoodIsOneFindingAndTakesNothingIn() throws IOException {
        Files.writeString(
                directory.resolve("advice.csv"),
                "Your ref,Job no.,Moneys\nSB-1101-STC,SB-1101,505.80\nSB-1102-STC,SB-1102,1.00\n");
        Program.Run run = run("settle", "advice.csv");
        assertThat(run.exitCode()).isEqualTo(10);
        assertThat(run.out())
                .containsOnlyOnce("[column-missing]")
                .contains("(amount)", "(paid-date)", "\"Moneys\"", "Nothing was taken in")
                .doesNotContain("All done");
    }

    @Test
    void bothFilesOfASettledAdviceGetTheSameNumber() throws IOException {
        Files.writeString(directory.resolve("advice-settled.csv"), "kept from before");
        Files.writeString(
                directory.resolve("advice.csv"),
                "Your ref,Date,Amount paid\nSB-1101-STC,1/11/2026,1.00\n");
        run("settle", "advice.csv");
        assertThat(directory.resolve("advice-settled-2.csv")).isRegularFile();
        assertThat(directory.resolve("advice-settled-2.xlsx")).isRegularFile();
        assertThat(directory.resolve("advice-settled.xlsx")).doesNotExist();
    }

    @Test
    void anExportHoldsEveryTableAndNeverTakesAnotherFoldersPlace() throws IOException {
        assertThat(run("export", "--out", "out").exitCode()).isZero();
        List<String> claims = Files.readAllLines(directory.resolve("out/claim.csv"));
        assertThat(claims).hasSize(claims().size() + 1);
        assertThat(claims.get(0)).startsWith("\uFEFFid,entry,job_key");
        assertThat(directory.resolve("out/matched.csv")).isRegularFile();
        assertThat(run("export", "--out", "out").exitCode()).isEqualTo(2);
    }

    @Test
    void withoutALedgerNothingIsAskedOfOne() {
        Program.Run run = run("settle", "advice.csv", "--ledger", "missing.db");
        assertThat(run.exitCode()).isEqualTo(11);
        Program.Run owed = run("owed", "--ledger", "missing.db");
        assertThat(owed.exitCode()).isEqualTo(21);
        assertThat(owed.err()).contains("There is no ledger", "ledger-new");
        assertThat(directory.resolve("missing.db")).doesNotExist();
    }

    @Test
    @Tag("outside")
    void anotherReaderOfTheDatabaseFindsTheSameSums() {
        Outside.Result sums =
                Outside.run(
                        directory,
                        "sqlite3",
                        directory.resolve("paperbark.db").toString(),
                        "SELECT count(*), sum(certificates), sum(expected_cents) FROM claim WHERE active = 1;"
                                + " PRAGMA integrity_check;");
        List<ClaimState> claims = claims();
        assertThat(sums.out().lines())
                .containsExactly(
                        claims.size()
                                + "|"
                                + claims.stream().mapToInt(ClaimState::certificates).sum()
                                + "|"
                                + sum(claims.stream().map(ClaimState::expected)).cents(),
                        "ok");
    }
}
