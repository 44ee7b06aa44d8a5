package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import paperbark.cli.Program;
import paperbark.outside.Postgres;

/** Offices whose ledger is on a PostgreSQL server that they share. */
@Tag("outside")
class OfficeOnServerTest {
    private static final String ADVICE =
            "Claim,Amount,Paid date,Status\nJ-1-STC,505.80,20/11/2026,paid\n";

    @TempDir private Path folder;

    private Postgres server;
    private Office office;

    @BeforeEach
    void makeAnOfficeAndTheLedger() throws IOException {
        server = Postgres.schema();
        office = Offices.sharing(folder.resolve("office"), server.url());
        assertThat(Program.run(office.root(), "ledger-new").exitCode()).isZero();
    }

    @AfterEach
    void tidy() {
        if (server != null) {
            server.close();
        }
    }

    private Program.Run run(String... words) {
        return Program.run(office.root(), words);
    }

    private Program.Run watch(Office attended) {
        return Program.run(
                folder, "watch", attended.root().toString(), "--once", "--quiet-for", "0");
    }

    private Program.Run drop(Office into, String name, String content) throws IOException {
        Files.writeString(into.intake().resolve(name), content);
        return watch(into);
    }

    private String claims() {
        return server.ask("SELECT count(*) FROM claim WHERE active = 1");
    }

    @Test
    void everyCommandWorksOnIt() throws IOException {
        assertThat(run("setup", ".").out()).doesNotContain("paperbark.db");
        assertThat(drop(office, "one.csv", Offices.register(1, 2)).exitCode()).isZero();
        assertThat(claims()).isEqualTo("2");
        assertThat(server.ask("SELECT string_agg(state, ' ') FROM progress")).isEqualTo("filed");
        Path same = Files.writeString(folder.resolve("same.csv"), Offices.register(1, 2));
        assertThat(run("prepare", same.toString(), "--tables", "tables", "--out", "packs").out())
                .contains("1 job-unchanged");
        Files.writeString(office.root().resolve("advice.csv"), ADVICE);
        assertThat(run("settle", "advice.csv").out()).contains("matched:      1");
        assertThat(run("settle", "advice.csv").exitCode()).isEqualTo(12);
        assertThat(office.root().resolve("advices/advice-2.json")).isRegularFile();
        assertThat(run("owed").out()).contains("Kestrel Certificates", "505.80");
        assertThat(run("quarters").out()).contains("Oct to Dec 2026", "505.80");
        assertThat(run("export", "--out", "out").exitCode()).isZero();
        assertThat(Files.readAllLines(office.root().resolve("out/claim.csv"))).hasSize(3);
        Program.Run doctor = run("doctor", ".");
        assertThat(doctor.exitCode()).as(doctor.out()).isZero();
        assertThat(office.status()).content().contains("2026-11-23-one");
        assertThat(office.ledgerFile()).doesNotExist();
    }

    @Test
    void whatOneOfficeForgetsTheOthersForgetWithTheirNextWatch() throws IOException {
        Office other = Offices.sharing(folder.resolve("other"), server.url());
        drop(other, "one.csv", Offices.register(1, 2));
        drop(office, "two.csv", Offices.register(3));
        Instant late = Instant.parse("2041-01-01T12:00:00Z");
        Program.Run here = Program.run(late, office.root(), "forget", "J-1");
        assertThat(here.exitCode()).as(here.err()).isZero();
        assertThat(here.out()).contains("Look:   packs/2026-11-23-one is not here");
        Path pack = other.packs().resolve("2026-11-23-one/packs/J-1.pdf");
        Path filed = other.filed().resolve("2026/2026-11-23-one/one.csv");
        assertThat(pack).exists();
        assertThat(run("doctor", other.root().toString()).out()).contains("job that is forgotten");
        Program.Run watch = watch(other);
        assertThat(watch.out()).contains("Job J-1 was forgotten");
        assertThat(pack).doesNotExist();
        assertThat(filed).content().doesNotContain("1 Teaspoon Lane").contains("2 Teaspoon Lane");
        assertThat(watch(other).out()).doesNotContain("forgotten");
    }

    @Test
    void theCopyOfTheDayIsAWholeLedgerThatAServerCanBeFilledFrom() throws IOException {
        drop(office, "one.csv", Offices.register(1, 2));
        Path copy = office.backups().resolve("paperbark-2026-11-23.db");
        Files.delete(copy);
        watch(office);
        String owed = run("owed").out();
        assertThat(run("owed", "--ledger", "backups/paperbark-2026-11-23.db").out())
                .isEqualTo(owed);
        try (Postgres other = Postgres.schema()) {
            Program.Run filled = run("ledger-new", other.url(), "--from", copy.toString());
            assertThat(filled.exitCode()).as(filled.err()).isZero();
            assertThat(filled.out()).doesNotContain("user=");
            assertThat(run("owed", "--ledger", other.url()).out()).isEqualTo(owed);
        }
    }

    @Test
    void aLedgerThatIsDamagedIsNotMadeAnewFromOneOfficesBatches() throws IOException {
        drop(office, "one.csv", Offices.register(1));
        server.run("UPDATE claim SET expected_cents = expected_cents + 100");
        Program.Run stopped = drop(office, "two.csv", Offices.register(2));
        assertThat(stopped.exitCode()).isEqualTo(21);
        assertThat(stopped.err()).contains("not as it was written", "server's own backup");
        assertThat(office.intake().resolve("two.csv")).isRegularFile();
        Program.Run rebuild = run("ledger-rebuild", ".");
        assertThat(rebuild.exitCode()).isEqualTo(21);
        assertThat(rebuild.err()).contains("other offices", "--from");
        assertThat(run("doctor", ".").out()).contains("MEND  ledger");
        server.run("UPDATE claim SET expected_cents = expected_cents - 100");
        assertThat(run("ledger-rebuild", ".").out()).contains("sound");
    }

    @Test
    void anOlderCopyBroughtBackOnTheServerIsNoticed() throws IOException {
        drop(office, "one.csv", Offices.register(1));
        server.run("TRUNCATE entry, office CASCADE");
        server.run("INSERT INTO office VALUES ('another', '2026', 4)");
        Program.Run run = watch(office);
        assertThat(run.exitCode()).isEqualTo(21);
        assertThat(run.err()).contains("older copy", "server's own backup");
    }

    @Test
    void aServerThatIsAwayLeavesTheRegisterInTheIntake() throws IOException {
        Files.writeString(
                office.root().resolve("ledger.txt"), server.url().replaceFirst(":\\d+/", ":1/"));
        Program.Run run = drop(office, "one.csv", Offices.register(1));
        assertThat(run.exitCode()).isEqualTo(22);
        assertThat(run.err()).contains("cannot be reached").doesNotContain("user=", "Exception");
        assertThat(office.intake().resolve("one.csv")).isRegularFile();
        Program.Run doctor = run("doctor", ".");
        assertThat(doctor.exitCode()).isEqualTo(22);
        assertThat(doctor.out()).containsPattern("MEND  ledger +The ledger's server");
    }

    @Test
    void aPasswordInTheAddressIsRefusedAndNotShown() throws IOException {
        String secret = server.url() + "&password=hidden";
        Files.writeString(office.root().resolve("ledger.txt"), secret);
        for (Program.Run run :
                List.of(
                        run("owed"),
                        run("owed", "--ledger", secret),
                        run("ledger-new", secret),
                        drop(office, "one.csv", Offices.register(1)))) {
            assertThat(run.exitCode()).isEqualTo(21);
            assertThat(run.err()).contains(".pgpass").doesNotContain("hidden");
        }
    }

    @ParameterizedTest
    @EnumSource
    void whenTheLineBreaksAtTheCommitTheNextStartFindsOutWhetherItWas(BreakingLine.Moment moment)
            throws IOException {
        Matcher port = Pattern.compile(":(\\d+)/").matcher(server.url());
        assertThat(port.find()).isTrue();
        try (BreakingLine line = new BreakingLine(Integer.parseInt(port.group(1)), moment)) {
            Files.writeString(
                    office.root().resolve("ledger.txt"),
                    port.replaceFirst(":" + line.port() + "/"));
            Program.Run broken = drop(office, "one.csv", Offices.register(1));
            assertThat(broken.exitCode()).as(broken.err()).isEqualTo(22);
            assertThat(broken.err()).contains("broke at the moment of taking in");
            assertThat(claims()).isEqualTo(moment == BreakingLine.Moment.AFTER ? "1" : "0");
            assertThat(office.packs().resolve("2026-11-23-one")).doesNotExist();
            assertThat(office.intake().resolve("one.csv")).isRegularFile();
            assertThat(watch(office).exitCode()).isIn(0, 12);
        }
        assertThat(claims()).isEqualTo("1");
        assertThat(office.packs().resolve("2026-11-23-one/manifest.json")).isRegularFile();
        assertThat(office.packs().resolve("2026-11-23-one-2")).doesNotExist();
        assertThat(server.ask("SELECT string_agg(state, ' ') FROM progress")).isEqualTo("filed");
        assertThat(office.intake()).isEmptyDirectory();
    }

    @Test
    void ofTwoOfficesThatClaimAHeaterAtOnceOneIsStopped() throws Exception {
        Office other = Offices.sharing(folder.resolve("other"), server.url());
        String serial = "2610040004512777";
        String headings = Offices.register();
        Files.writeString(office.intake().resolve("w.csv"), headings + Offices.row(1, serial));
        Files.writeString(other.intake().resolve("w.csv"), headings + Offices.row(2, serial));
        Process here = Child.watch(office, folder.resolve("here.txt"));
        Process there = Child.watch(other, folder.resolve("there.txt"));
        assertThat(List.of(Child.end(here), Child.end(there))).isSubsetOf(0, 10, 20);
        // Who was told to begin again does so.
        watch(office);
        watch(other);
        assertThat(claims()).isEqualTo("1");
        assertThat(server.ask("SELECT count(*) FROM serial WHERE active = 1")).isEqualTo("1");
        assertThat(server.ask("SELECT string_agg(outcome, ' ' ORDER BY outcome) FROM job"))
                .isEqualTo("held issued");
        assertThat(office.intake()).isEmptyDirectory();
        assertThat(other.intake()).isEmptyDirectory();
        assertThat(server.ask("SELECT string_agg(name, ' ' ORDER BY name) FROM entry"))
                .isEqualTo("2026-11-23-w 2026-11-23-w-2");
    }

    @Test
    void whatAnotherOfficeHasStillToPublishIsLeftToIt() throws Exception {
        Files.writeString(office.intake().resolve("one.csv"), Offices.register(1));
        Process cut = Child.watch(office, folder.resolve("cut.txt"), "paperbark.fault=COMMITTED");
        assertThat(Child.end(cut)).isEqualTo(137);
        Office other = Offices.sharing(folder.resolve("other"), server.url());
        Program.Run there = drop(other, "two.csv", Offices.register(2));
        assertThat(there.exitCode()).as(there.out() + there.err()).isZero();
        assertThat(state("one")).isEqualTo("committed");
        assertThat(state("two")).isEqualTo("filed");
        assertThat(other.packs().resolve("2026-11-23-two/index.html"))
                .content()
                .doesNotContain("2026-11-23-one");
        assertThat(other.status()).content().doesNotContain("2026-11-23-one");
        assertThat(watch(office).exitCode()).isIn(0, 12);
        assertThat(state("one")).isEqualTo("filed");
        assertThat(office.packs().resolve("2026-11-23-one/manifest.json")).isRegularFile();
        assertThat(claims()).isEqualTo("2");
    }

    private String state(String register) {
        return server.ask(
                "SELECT state FROM progress JOIN entry ON seq = entry WHERE name = '2026-11-23-"
                        + register
                        + "'");
    }

    @Test
    void aCopyOfAnOfficeAsksBeforeItTakesTheOthersBatchesForItsOwn() throws IOException {
        assertThat(drop(office, "one.csv", Offices.register(1)).exitCode()).isZero();
        Offices.copy(office.root(), folder.resolve("copy"));
        Office copy = Office.in(folder.resolve("copy"));
        Program.Run asks = drop(copy, "two.csv", Offices.register(2));
        assertThat(asks.exitCode()).isEqualTo(21);
        assertThat(asks.err()).contains(office.root().toString(), "--moved", "--copied");
        assertThat(Program.run(copy.root(), "owed").exitCode()).isEqualTo(21);
        Program.Run own =
                Program.run(copy.root(), "watch", ".", "--once", "--quiet-for", "0", "--copied");
        assertThat(own.exitCode()).as(own.err()).isZero();
        assertThat(watch(copy).exitCode()).isZero();
        assertThat(server.ask("SELECT count(DISTINCT place) FROM progress")).isEqualTo("2");
    }

    @Test
    void anOfficeThatWasMovedGoesOnOnceSomebodySaysSo() throws IOException {
        assertThat(drop(office, "one.csv", Offices.register(1)).exitCode()).isZero();
        Path there = Files.move(office.root(), folder.resolve("moved"));
        Office moved = Office.in(there);
        assertThat(watch(moved).exitCode()).isEqualTo(21);
        assertThat(
                        Program.run(there, "watch", ".", "--once", "--quiet-for", "0", "--moved")
                                .exitCode())
                .isZero();
        assertThat(drop(moved, "two.csv", Offices.register(2)).exitCode()).isZero();
        assertThat(server.ask("SELECT count(DISTINCT place) FROM progress")).isEqualTo("1");
    }

    @Test
    void anIndexThatSomebodyDroppedOnTheServerIsNoticed() throws IOException {
        assertThat(drop(office, "one.csv", Offices.register(1)).exitCode()).isZero();
        server.run("DROP INDEX claim_once");
        Program.Run owed = run("owed");
        assertThat(owed.exitCode()).isEqualTo(21);
        assertThat(owed.err()).contains("tables and indices");
    }
}
