package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.cli.Program;
import paperbark.disk.Disk;
import paperbark.ledger.Resealed;

/** What an office's folders tell of its ledger is asked before anything is taken in or told. */
class WitnessesTest {
    private static final String ADVICE =
            "Claim,Amount,Paid date,Status\nJ-1-STC,505.80,20/11/2026,paid\n";

    @TempDir private static Path shared;

    @TempDir private Path folder;

    private Office office;

    /** A batch, and then an advice; the ledgers before each lie beside the office. */
    @BeforeAll
    static void workForAWhile() throws IOException {
        Office office = Offices.make(shared.resolve("office"));
        Files.copy(office.ledgerFile(), shared.resolve("empty.db"));
        Files.writeString(office.intake().resolve("one.csv"), Offices.register(1, 2));
        assertThat(watch(shared, office).exitCode()).isZero();
        Files.copy(office.ledgerFile(), shared.resolve("before-payment.db"));
        Files.writeString(office.root().resolve("advice.csv"), ADVICE);
        assertThat(Program.run(office.root(), "settle", "advice.csv").exitCode()).isZero();
    }

    private static Program.Run watch(Path directory, Office office) {
        return Program.run(
                directory, "watch", office.root().toString(), "--once", "--quiet-for", "0");
    }

    @BeforeEach
    void takeACopy() throws IOException {
        Offices.copy(shared.resolve("office"), folder.resolve("office"));
        office = Office.in(folder.resolve("office"));
    }

    private Program.Run run(String... words) {
        return Program.run(office.root(), words);
    }

    private void bringBack(String ledger) throws IOException {
        Files.write(office.ledgerFile(), Files.readAllBytes(shared.resolve(ledger)));
    }

    private void change(String statement) throws SQLException {
        try (Connection connection =
                        DriverManager.getConnection("jdbc:sqlite:" + office.ledgerFile());
                Statement all = connection.createStatement()) {
            all.executeUpdate(statement);
        }
    }

    /** Every command that takes something in or tells of money. */
    private void everyCommandStops(String... said) throws IOException {
        Files.writeString(office.intake().resolve("two.csv"), Offices.register(1, 2, 3));
        for (List<String> words :
                List.of(
                        List.of("prepare", "intake/two.csv"),
                        List.of("check", "intake/two.csv"),
                        List.of("settle", "advice.csv"),
                        List.of("owed"),
                        List.of("quarters"),
                        List.of("watch", ".", "--once", "--quiet-for", "0"),
                        List.of("forget", "J-1"))) {
            Program.Run run = run(words.toArray(String[]::new));
            assertThat(run.exitCode()).as(words + run.out() + run.err()).isEqualTo(21);
            assertThat(run.err()).as(words.toString()).contains(said).contains("ledger-rebuild");
        }
        assertThat(Office.list(office.packs()).stream().filter(f -> !Office.isHidden(f)))
                .hasSize(1);
        Files.delete(office.intake().resolve("two.csv"));
        assertThat(run("doctor", ".").out()).contains("MEND  ledger");
    }

    private void rebuildMakesItWhole() {
        Program.Run rebuild = run("ledger-rebuild", ".");
        assertThat(rebuild.exitCode()).as(rebuild.err()).isZero();
        Program.Run doctor = run("doctor", ".");
        assertThat(doctor.out()).contains("well  ledger");
        assertThat(Invariants.query(office.root(), "SELECT count(*) FROM matched")).isEqualTo("1");
    }

    @Test
    void anOlderLedgerStopsEveryCommandAndIsMadeWhole() throws IOException {
        bringBack("empty.db");
        everyCommandStops("does not know packs/2026-11-23-one", "older copy");
        rebuildMakesItWhole();
    }

    @Test
    void aLedgerThatLacksOnlyAPaymentStopsEveryCommandAndIsMadeWhole() throws IOException {
        bringBack("before-payment.db");
        everyCommandStops("does not know advices/advice-2.json");
        rebuildMakesItWhole();
    }

    @Test
    void aDeletedLastEntryIsNoticed() throws Exception {
        for (String table : List.of("matched", "line", "entry")) {
            change(
                    "DELETE FROM "
                            + table
                            + " WHERE "
                            + (table.equals("entry") ? "seq" : "entry")
                            + " = 2");
        }
        everyCommandStops("advices/advice-2.json");
        rebuildMakesItWhole();
    }

    @Test
    void noLedgerWhereAnOfficeIsStopsEveryCommand() throws IOException {
        Files.delete(office.ledgerFile());
        everyCommandStops("There is no ledger");
        rebuildMakesItWhole();
    }

    @Test
    void aFiledRegisterProvesThatItWasTakenInWhereAllElseIsGone() throws IOException {
        bringBack("empty.db");
        for (String gone : List.of("packs", "advices", "backups")) {
            Disk.delete(office.root().resolve(gone));
        }
        Program.Run owed = run("owed");
        assertThat(owed.exitCode()).isEqualTo(21);
        assertThat(owed.err())
                .contains("filed/2026/2026-11-23-one", "move the register into intake");
        assertThat(run("ledger-rebuild", ".").exitCode()).isEqualTo(21);
    }

    @Test
    void aCopyOfTheDayTellsWhereTheAdvicesAreGone() throws IOException {
        Disk.delete(office.backups());
        assertThat(watch(folder, office).exitCode()).isZero();
        Disk.delete(office.root().resolve("advices"));
        bringBack("before-payment.db");
        everyCommandStops("ends before backups/paperbark-2026-11-23.db");
        rebuildMakesItWhole();
    }

    @Test
    void aLedgerThatWasChangedAndSealedAnewIsNoticed() throws Exception {
        change("UPDATE claim SET expected_cents = 1 WHERE id = 1");
        Resealed.ledger(office.ledgerFile());
        everyCommandStops("packs/2026-11-23-one tells entry 1 otherwise");
        rebuildMakesItWhole();
    }

    @ParameterizedTest
    @ValueSource(strings = {"claim_once", "serial_once"})
    void aUniqueIndexThatWasDroppedIsNoticed(String index) throws Exception {
        change("DROP INDEX " + index);
        everyCommandStops("tables and indices");
        rebuildMakesItWhole();
    }

    @Test
    void aCopyOfABatchFolderIsToldAndWorkGoesOn() throws IOException {
        Path batch = office.packs().resolve("2026-11-23-one");
        Offices.copy(batch, office.packs().resolve("2026-11-23-one - Copy"));
        Files.writeString(office.intake().resolve("two.csv"), Offices.register(3));
        Program.Run watch = watch(folder, office);
        assertThat(watch.exitCode()).as(watch.err()).isZero();
        assertThat(watch.out()).contains("2026-11-23-one - Copy is a copy of batch 2026-11-23-one");
        assertThat(run("owed").err()).contains("2026-11-23-one - Copy is a copy");
    }

    @Test
    void aRenamedBatchFolderIsKnownByWhatIsInItAndNotMadeAgain() throws IOException {
        Path batch = office.packs().resolve("2026-11-23-one");
        Disk.move(batch, office.packs().resolve("2026-11-23-one printed"));
        Program.Run watch = watch(folder, office);
        assertThat(watch.exitCode()).as(watch.err()).isZero();
        assertThat(watch.out()).contains("2026-11-23-one printed is batch 2026-11-23-one");
        assertThat(batch).doesNotExist();
    }

    private static Map<String, String> hashes(Path batch) throws IOException {
        Map<String, String> all = new TreeMap<>();
        for (Path file : Invariants.files(batch)) {
            all.put(batch.relativize(file).toString(), Invariants.sha256(file));
        }
        return all;
    }

    @Test
    void lostPacksAreMadeAgainToTheByte() throws IOException {
        Path batch = office.packs().resolve("2026-11-23-one");
        Map<String, String> before = hashes(batch);
        Disk.delete(office.packs());
        Program.Run watch = watch(folder, office);
        assertThat(watch.exitCode()).as(watch.err()).isZero();
        // The id of packs went with it, and is a new one now.
        Disk.delete(batch);
        assertThat(run("owed").err()).contains("The papers of batch 2026-11-23-one");
        assertThat(watch(folder, office).out()).contains("made again, as they were");
        assertThat(hashes(batch)).isEqualTo(before);
        assertThat(watch(folder, office).out()).doesNotContain("made again");
    }

    @Test
    void lostPacksAreMadeAgainWithAWordWhereTheTablesAreOthersNow() throws IOException {
        Path batch = office.packs().resolve("2026-11-23-one");
        Disk.delete(batch);
        Path firm = office.tables().resolve("firm.csv");
        Files.writeString(firm, Files.readString(firm).replace("2 Samovar", "3 Samovar"));
        assertThat(watch(folder, office).out()).contains("hold them against what was signed");
        assertThat(batch.resolve("packs/J-1.pdf")).isRegularFile();
        assertThat(watch(folder, office).out()).doesNotContain("made again");
        assertThat(run("owed").exitCode()).isZero();
        Files.delete(office.ledgerFile());
        Disk.delete(office.backups());
        rebuildMakesItWhole();
    }
}
