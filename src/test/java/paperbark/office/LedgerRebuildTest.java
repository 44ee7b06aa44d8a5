package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.cli.Program;
import paperbark.disk.Disk;
import paperbark.ledger.Export;
import paperbark.ledger.Ledger;

/** A ledger that is lost is made anew from what lies in the office folder, and equals the old. */
class LedgerRebuildTest {
    @TempDir private static Path shared;

    @TempDir private Path folder;

    private Office office;

    /** Two batches, the second correcting the first, and an advice settled in between. */
    @BeforeAll
    static void workForAWhile() throws IOException {
        Office office = Offices.make(shared.resolve("office"));
        register(office, "one.csv", Offices.register(1, 2));
        Path advice =
                Files.writeString(
                        shared.resolve("advice.csv"),
                        "Claim,Amount,Paid date,Status\nJ-1-STC,505.80,20/11/2026,paid\n");
        String ledger = office.ledger().toString();
        assertThat(Program.run(shared, "settle", advice.toString(), "--ledger", ledger).exitCode())
                .isZero();
        register(
                office,
                "two.csv",
                Offices.register(3)
                        + Offices.row(2, "2610040004512999")
                        + Offices.row(4, "2610040004512104"));
    }

    private static void register(Office office, String name, String content) throws IOException {
        Files.writeString(office.intake().resolve(name), content);
        watch(office);
    }

    private static void watch(Office office) {
        String root = office.root().toString();
        assertThat(Program.run(shared, "watch", root, "--once", "--quiet-for", "0").exitCode())
                .isZero();
    }

    @BeforeEach
    void takeACopy() throws IOException {
        Offices.copy(shared.resolve("office"), folder.resolve("office"));
        office = Office.in(folder.resolve("office"));
    }

    private void watch() {
        watch(office);
    }

    private Program.Run run(String... words) {
        return Program.run(folder, words);
    }

    private Program.Run rebuild() {
        return run("ledger-rebuild", office.root().toString());
    }

    /** Everything in it but where the hidden folders once lay. */
    private List<String> all() {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            return Export.of(ledger).stream()
                    .flatMap(
                            table ->
                                    table.rows().stream()
                                            .map(
                                                    row ->
                                                            table.name()
                                                                    + (table.name()
                                                                                    .equals(
                                                                                            "progress")
                                                                            ? row.get(0)
                                                                                    + row.get(3)
                                                                            : row.toString())))
                    .toList();
        }
    }

    private void equalsTheOld(List<String> before) {
        watch();
        assertThat(all()).isEqualTo(before);
        assertThat(Invariants.query(office.root(), "SELECT count(*) FROM withdrawal"))
                .isEqualTo("1");
        assertThat(Invariants.query(office.root(), "SELECT count(*) FROM matched")).isEqualTo("1");
    }

    @Test
    @Tag("slow")
    void aLedgerThatAnotherProgramWritesInIsNotTakenForALostOne() throws Exception {
        byte[] before = Files.readAllBytes(Offices.ledgerFile(office));
        try (var other =
                        java.sql.DriverManager.getConnection(
                                "jdbc:sqlite:" + Offices.ledgerFile(office));
                var statement = other.createStatement()) {
            statement.execute("BEGIN EXCLUSIVE");
            assertThat(rebuild().exitCode()).isEqualTo(20);
            assertThat(run("doctor", office.root().toString()).exitCode()).isEqualTo(20);
            statement.execute("ROLLBACK");
        }
        assertThat(Files.readAllBytes(Offices.ledgerFile(office))).isEqualTo(before);
        assertThat(office.root().resolve("paperbark-set-aside.db")).doesNotExist();
    }

    private void forgetTheCopies() throws IOException {
        Disk.delete(office.backups());
    }

    @Test
    void aMissingLedgerIsMadeAnewFromBatchesAndAdvicesAndEqualsTheOld() throws IOException {
        List<String> before = all();
        forgetTheCopies();
        Files.delete(office.ledgerFile());
        Program.Run watch = run("watch", office.root().toString(), "--once", "--quiet-for", "0");
        assertThat(watch.exitCode()).isEqualTo(21);
        assertThat(watch.err()).contains("ledger-rebuild");
        assertThat(rebuild().exitCode()).isZero();
        equalsTheOld(before);
    }

    @Test
    void aDamagedLedgerIsSetAsideWithItsJournalUnderANumberedName() throws IOException {
        List<String> before = all();
        forgetTheCopies();
        for (String name : List.of("paperbark-set-aside.db", "paperbark-set-aside-2.db")) {
            byte[] damaged = Files.readAllBytes(office.ledgerFile());
            for (int i = 5000; i < 9000; i++) {
                damaged[i] ^= 1;
            }
            Files.write(office.ledgerFile(), damaged);
            Path journal = office.root().resolve("paperbark.db-journal");
            Files.writeString(journal, "half written");
            Program.Run watch =
                    run("watch", office.root().toString(), "--once", "--quiet-for", "0");
            assertThat(watch.exitCode()).isEqualTo(21);
            assertThat(watch.err()).contains("ledger-rebuild");
            assertThat(rebuild().exitCode()).isZero();
            assertThat(office.root().resolve(name)).hasBinaryContent(damaged);
            assertThat(journal).doesNotExist();
            equalsTheOld(before);
        }
        assertThat(rebuild().out()).contains("sound");
    }

    @Test
    void aValueThatSomebodyChangedInTheFileIsFoundAndMended() throws IOException {
        List<String> before = all();
        forgetTheCopies();
        byte[] changed = Files.readAllBytes(office.ledgerFile());
        int at = indexOf(changed, "Kestrel");
        changed[at] = 'W';
        Files.write(office.ledgerFile(), changed);
        assertThat(rebuild().exitCode()).isZero();
        equalsTheOld(before);
    }

    private static int indexOf(byte[] bytes, String word) {
        return new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1).indexOf(word);
    }

    @Test
    void anOlderCopyPutInItsPlaceIsNoticedAndMadeWhole() throws IOException {
        List<String> before = all();
        Path copy = office.backups().resolve("paperbark-2026-11-23.db");
        Files.write(office.ledgerFile(), Files.readAllBytes(copy));
        Program.Run watch = run("watch", office.root().toString(), "--once", "--quiet-for", "0");
        assertThat(watch.exitCode()).isEqualTo(21);
        assertThat(watch.err()).contains("older copy", "ledger-rebuild");
        assertThat(rebuild().exitCode()).isZero();
        equalsTheOld(before);
    }

    @Test
    void aBatchThatWasMovedAwayComesFromTheNewestCopy() throws IOException {
        List<String> before = all();
        forgetTheCopies();
        watch();
        Disk.delete(office.packs().resolve("2026-11-23-one"));
        Disk.delete(office.root().resolve("advices"));
        Files.delete(office.ledgerFile());
        assertThat(rebuild().exitCode()).isZero();
        equalsTheOld(before);
    }

    @Test
    void anEntryThatIsNowhereStopsItAndChangesNothing() throws IOException {
        forgetTheCopies();
        Disk.delete(office.root().resolve("advices"));
        Files.writeString(office.ledgerFile(), "damaged");
        List<Path> before = files();
        Program.Run run = rebuild();
        assertThat(run.exitCode()).isEqualTo(21);
        assertThat(run.err()).contains("Entry 2", "2026-11-23-two");
        assertThat(files()).isEqualTo(before);
        assertThat(office.ledgerFile()).hasContent("damaged");
    }

    @Test
    void anEntryThatSomebodyChangedIsNotTaken() throws IOException {
        forgetTheCopies();
        Files.delete(office.ledgerFile());
        Path entry = office.packs().resolve("2026-11-23-one/ledger.json");
        String sound = Files.readString(entry);
        assertThat(sound).contains("Kestrel");
        Files.writeString(entry, sound.replace("Kestrel", "Westrel"));
        assertThat(rebuild().exitCode()).isEqualTo(21);
        assertThat(office.ledgerFile()).doesNotExist();
    }

    @Test
    void anAdviceOfAnotherOfficeIsNotMixedIn() throws IOException {
        Files.writeString(office.ledgerFile(), "damaged");
        Path advice = office.root().resolve("advices/advice-2.json");
        String other =
                Files.readString(advice).replaceFirst("\"id\" : \"[^\"]*\"", "\"id\" : \"x\"");
        Files.writeString(advice, other, StandardOpenOption.TRUNCATE_EXISTING);
        Program.Run run = rebuild();
        assertThat(run.exitCode()).isEqualTo(21);
        assertThat(run.err()).contains("another ledger");
    }

    @Test
    void anAdviceWhoseFileWasCutShortGetsItWithTheNextStart() throws IOException {
        Path advice = office.root().resolve("advices/advice-2.json");
        byte[] before = Files.readAllBytes(advice);
        Files.delete(advice);
        watch();
        assertThat(advice).hasBinaryContent(before);
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> all = Files.walk(office.root())) {
            return all.filter(f -> !f.getFileName().toString().startsWith("office.lock"))
                    .sorted()
                    .collect(Collectors.toCollection(ArrayList::new));
        }
    }
}
