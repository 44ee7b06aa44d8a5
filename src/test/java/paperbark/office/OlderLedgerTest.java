package paperbark.office;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import paperbark.cli.Program;
import paperbark.ledger.Export;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerPlace;

/**
 * Ledgers as earlier schemas wrote them, with the batches and advices beside them, are brought to
 * the schema of today. {@code src/test/resources/ledger/version-<n>} was written by the program of
 * that time: two batches, the second correcting the first, and an advice in between.
 */
class OlderLedgerTest {
    private static final Path WRITTEN = Path.of("src/test/resources/ledger");

    @TempDir private Path folder;

    /** Those whose prints have no key. */
    static List<String> unkeyed() {
        return List.of("version-1", "version-2");
    }

    static List<String> versions() throws IOException {
        try (Stream<Path> all = Files.list(WRITTEN)) {
            return all.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void everyEarlierSchemaIsTried() throws IOException {
        try (Stream<Path> sql = Files.list(Path.of("src/main/resources/ledger"))) {
            String newest = sql.map(p -> p.getFileName().toString()).max(String::compareTo).get();
            int today = Integer.parseInt(newest.replaceAll("\\D", ""));
            assertThat(versions())
                    .isEqualTo(
                            Stream.iterate(1, n -> n < today, n -> n + 1)
                                    .map(n -> "version-" + n)
                                    .toList());
        }
    }

    private Office office(String version) throws IOException {
        Path root = folder.resolve("office");
        Offices.copy(WRITTEN.resolve(version), root);
        Offices.copy(Path.of("input-samples/tables"), root.resolve("tables"));
        return Office.in(root);
    }

    private static List<String> all(Office office) {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            return Export.of(ledger).stream()
                    .filter(table -> !table.name().equals("progress"))
                    .flatMap(table -> table.rows().stream().map(row -> table.name() + row))
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("unkeyed")
    void printsWithoutAKeyAreEmptiedAndWhoeverComesAgainCountsAsChanged(String version)
            throws IOException {
        Office office = office(version);
        String weak = DigestUtils.sha256Hex("Ada Amberwood").substring(0, 16);
        Path kept = office.packs().resolve("2026-11-26-one/ledger.json");
        assertThat(kept).content().contains(weak);
        assertThat(all(office)).noneMatch(row -> row.contains(weak));

        Files.writeString(office.intake().resolve("three.csv"), Offices.register(1, 5));
        Program.Run watch = run("watch", office.root().toString(), "--once", "--quiet-for", "0");
        assertThat(watch.exitCode()).isEqualTo(10);
        assertThat(watch.out()).contains("taken out of the entries beside 2 batches");
        assertThat(kept).content().doesNotContain(weak).contains("1TEASPOONLANE");
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            // The claim that is paid stands as it did, and is not made a second time.
            assertThat(ledger.claims(LocalDate.of(2026, 12, 31)))
                    .extracting(c -> c.reference() + " " + c.received())
                    .containsExactly(
                            "J-1-STC $504.00",
                            "J-3-STC $0.00",
                            "J-2-STC $0.00",
                            "J-4-STC $0.00",
                            "J-5-STC $0.00");
        }
        Files.writeString(office.intake().resolve("four.csv"), Offices.register(3));
        assertThat(run("watch", office.root().toString(), "--once", "--quiet-for", "0").exitCode())
                .isZero();
        Files.writeString(office.intake().resolve("five.csv"), Offices.register(3) + "\n");
        run("watch", office.root().toString(), "--once", "--quiet-for", "0");
        try (Ledger ledger = Ledger.open(office.ledger())) {
            assertThat(ledger.versions("J-3")).hasSize(2);
            assertThat(ledger.claims(LocalDate.of(2026, 12, 31)))
                    .filteredOn(c -> c.job().equals("J-3"))
                    .singleElement()
                    .satisfies(c -> assertThat(c.batch()).isEqualTo("2026-11-26-two"));
        }
    }

    private Program.Run run(String... words) {
        return Program.run(folder, words);
    }

    @ParameterizedTest
    @MethodSource("versions")
    void nothingIsLostAndTheOldOneIsKept(String version) throws IOException {
        Office office = office(version);
        byte[] old = Files.readAllBytes(Offices.ledgerFile(office));
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ledger.verify();
            assertThat(ledger.claims(LocalDate.of(2026, 12, 31)))
                    .extracting(c -> c.reference() + " " + c.received())
                    .containsExactly(
                            "J-1-STC $504.00", "J-3-STC $0.00", "J-2-STC $0.00", "J-4-STC $0.00");
            assertThat(ledger.versions("J-2"))
                    .extracting(v -> v.batch() + " " + v.installedOn().orElseThrow())
                    .containsExactly("2026-11-26-one 2026-11-16", "2026-11-26-two 2026-11-16");
            assertThat(ledger.batches().unpublished("here")).isEmpty();
            assertThat(ledger.batches().unfiled("here")).isEmpty();
        }
        Path kept = office.root().resolve("paperbark.db.schema-" + version.replaceAll("\\D", ""));
        assertThat(Invariants.query(office.root(), "PRAGMA user_version")).isEqualTo("4");
        assertThat(kept).exists();
        assertThat(Files.size(kept)).isLessThanOrEqualTo(old.length);
        List<String> once = all(office);
        assertThat(all(office)).isEqualTo(once);
    }

    @ParameterizedTest
    @MethodSource("versions")
    void whatItWasBeforeGoesOnceACopyOfTheNewerOneIsThere(String version) throws IOException {
        Office office = office(version);
        List<String> lifted = all(office);
        assertThat(OlderLedgers.in(office)).hasSize(1);
        assertThat(run("doctor", office.root().toString()).out())
                .contains("The next watch deletes");
        // A copy that lacks an entry, or is none, is no copy.
        Path copy = office.backups().resolve("paperbark-2026-11-30.db");
        Files.createDirectories(office.backups());
        for (boolean sound : new boolean[] {false, true}) {
            try (Ledger ledger = Ledger.open(office.ledger())) {
                if (sound) {
                    Ledger.rebuild(
                            new LedgerPlace.InFile(copy), ledger.id(), ledger.records().before(2));
                } else {
                    Files.writeString(copy, "not a ledger");
                }
                assertThat(OlderLedgers.clear(office, ledger)).isZero();
            }
            Files.delete(copy);
        }
        assertThat(OlderLedgers.in(office)).hasSize(1);
        Program.Run watch = run("watch", office.root().toString(), "--once", "--quiet-for", "0");
        assertThat(watch.out()).contains("the ledger as an earlier version wrote it is deleted");
        assertThat(OlderLedgers.in(office)).isEmpty();
        assertThat(Office.list(office.backups()).toString()).doesNotContain("schema");
        assertThat(all(office)).isEqualTo(lifted);
        watch = run("watch", office.root().toString(), "--once", "--quiet-for", "0");
        assertThat(watch.out()).doesNotContain("an earlier version");
    }

    @ParameterizedTest
    @MethodSource("versions")
    void oneMadeAnewFromTheFilesOfThatTimeEqualsIt(String version) throws IOException {
        Office office = office(version);
        List<String> lifted = all(office);
        Files.delete(Offices.ledgerFile(office));
        assertThat(run("ledger-rebuild", office.root().toString()).exitCode()).isZero();
        assertThat(all(office)).isEqualTo(lifted);
    }

    @ParameterizedTest
    @MethodSource("versions")
    void workGoesOnAndBothTimesTogetherMakeItAnew(String version) throws IOException {
        Office office = office(version);
        Files.writeString(
                office.intake().resolve("three.csv"),
                Offices.register(5) + Offices.row(6, "2610040004512101"));
        Program.Run watch = run("watch", office.root().toString(), "--once", "--quiet-for", "0");
        // The serial of job 6 was claimed for job 1 in the old ledger.
        assertThat(watch.exitCode()).isEqualTo(10);
        List<String> before = all(office);
        assertThat(before.toString()).contains("J-5-STC").doesNotContain("J-6-STC");
        Files.delete(Offices.ledgerFile(office));
        for (Path copy : Office.list(office.backups())) {
            Files.delete(copy);
        }
        assertThat(run("ledger-rebuild", office.root().toString()).exitCode()).isZero();
        assertThat(all(office)).isEqualTo(before);
    }

    @ParameterizedTest
    @MethodSource("versions")
    void oneThatSomebodyChangedStaysAsItIs(String version) throws IOException, SQLException {
        Office office = office(version);
        try (Connection connection =
                        DriverManager.getConnection("jdbc:sqlite:" + Offices.ledgerFile(office));
                Statement change = connection.createStatement()) {
            change.execute("UPDATE claim SET certificates = 99 WHERE id = 1");
        }
        byte[] changed = Files.readAllBytes(Offices.ledgerFile(office));
        assertThatThrownBy(() -> Ledger.open(office.ledger()))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("not as it was written");
        assertThat(Offices.ledgerFile(office)).hasBinaryContent(changed);
    }
}
