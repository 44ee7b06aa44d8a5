package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.codec.digest.DigestUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.batch.EntryFile;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** A ledger that goes into new tables: out of an older schema, or made anew from its entries. */
class MigrationTest {
    private static final Path WRITTEN = Path.of("src/test/resources/ledger");

    @TempDir private Path folder;

    private Path older(int version) throws IOException {
        Path file = folder.resolve("paperbark.db");
        Files.copy(WRITTEN.resolve("version-" + version + "/paperbark.db"), file);
        return file;
    }

    private static void change(Path file, String statement) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement run = connection.createStatement()) {
            run.execute(statement);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void oneOfAnOlderSchemaIsBroughtToTodaysAndStaysBesideItAsItWas(int version)
            throws IOException {
        Path file = older(version);
        try (Ledger ledger = Ledger.open(file)) {
            ledger.verify();
            assertThat(ledger.claims(LocalDate.of(2026, 12, 31)))
                    .extracting(c -> c.reference() + " " + c.received())
                    .contains("J-1-STC $504.00", "J-2-STC $0.00");
            assertThat(ledger.records().all())
                    .allMatch(entry -> entry.schema() == Schema.VERSION)
                    .extracting(EntryRecord::kind)
                    .contains("batch", "advice");
            assertThat(ledger.batches().progress())
                    .extracting(BatchProgress::state)
                    .containsOnly("filed");
            assertThat(ledger.versions("J-1")).allMatch(v -> v.installedOn().isPresent());
        }
        Path before = folder.resolve("paperbark.db.schema-" + version);
        assertThat(Files.getPosixFilePermissions(before)).hasSize(2);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + before);
                Statement run = connection.createStatement();
                var row = run.executeQuery("PRAGMA user_version")) {
            assertThat(row.getInt(1)).isEqualTo(version);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        Files.delete(before);
        Ledger.open(file).close();
        assertThat(before).doesNotExist();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void oneThatSomebodyChangedStaysAsItIs(int version) throws IOException, SQLException {
        Path file = older(version);
        change(file, "UPDATE claim SET expected_cents = expected_cents + 1");
        byte[] changed = Files.readAllBytes(file);
        assertThatThrownBy(() -> Ledger.open(file))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("not as it was written");
        assertThat(Files.readAllBytes(file)).isEqualTo(changed);
    }

    /** Every kind of entry that there is. */
    private Ledger full() {
        Ledger ledger = unforgotten();
        ledger.forget("SB-2", Entries.DAY, Instant.EPOCH, "test");
        new ScanBook(ledger).enter(Entries.scan("44", Entries.page(1, "SB-1", 2, 1, 0)));
        return ledger;
    }

    private Ledger unforgotten() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        Ledger ledger = Ledger.open(file);
        ClaimEntry[] claims = {
            Entries.claim(SchemeName.STC, "T-100", "504.00"),
            Entries.claim(SchemeName.STC, "T-101", "504.00"),
            Entries.claim(SchemeName.STC, "T-200", "10.00")
        };
        Entries.enter(
                ledger,
                Entries.batch(
                        "one", Entries.job("SB-1", claims[0]), Entries.job("SB-2", claims[2])));
        Entries.enter(ledger, Entries.batch("two", Entries.job("SB-1", claims[1])));
        // The serial of the claim that was corrected is free again.
        Entries.enter(ledger, Entries.batch("three", Entries.job("SB-3", claims[0])));
        ledger.settle(
                Entries.advice("33"),
                book -> {
                    Money money = Money.of("504.00");
                    AdviceLine line = new AdviceLine("k", 2, Entries.DAY, money, "SB-1-STC");
                    ClaimState claim = book.byReference("SB-1-STC").get(0);
                    return book.match(
                            book.enter(line),
                            line,
                            claim,
                            AdviceStatus.PAID,
                            money,
                            "reference",
                            "",
                            "K1");
                });
        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("SB-2", "called off")),
                        "",
                        "",
                        Entries.DAY,
                        Instant.EPOCH,
                        "test"));
        return ledger;
    }

    private static List<String> all(Ledger ledger, String without) {
        List<String> rows = new ArrayList<>();
        for (Export.ExportedTable table : Export.of(ledger)) {
            if (!table.name().equals(without)) {
                rows.add(table.name() + table.headings());
                table.rows().forEach(row -> rows.add(table.name() + row));
            }
        }
        return rows;
    }

    @Test
    void aLedgerMadeAnewFromItsEntriesIsTheSameRowByRow() {
        LedgerPlace other = new LedgerPlace.InFile(folder.resolve("anew.db"));
        try (Ledger ledger = full()) {
            assertThat(all(ledger, "").toString())
                    .contains(
                            "claim[id, ",
                            " active], claim[",
                            "withdrawal[",
                            "forgotten[",
                            "scanned[",
                            "matched[")
                    .containsPattern("claim\\[1, [^]]*, 0\\], ")
                    .doesNotContain("SITE OF SB-2");
            Ledger.rebuild(other, ledger.id(), ledger.records().all());
            try (Ledger anew = Ledger.open(other)) {
                anew.verify();
                assertThat(all(anew, "progress")).isEqualTo(all(ledger, "progress"));
                assertThat(anew.batches().progress())
                        .extracting(BatchProgress::name, BatchProgress::state)
                        .containsExactly(
                                tuple("one", "published"),
                                tuple("two", "published"),
                                tuple("three", "published"));
            }
        }
    }

    @Test
    void anEntryThatWasForgottenSinceIsEmptiedWhereItIsPutBackWhole() {
        LedgerPlace other = new LedgerPlace.InFile(folder.resolve("anew.db"));
        try (Ledger ledger = unforgotten()) {
            List<EntryRecord> entries = new ArrayList<>(ledger.records().all());
            assertThat(entries.toString()).contains("SITE OF SB-2");
            ledger.forget("SB-2", Entries.DAY, Instant.EPOCH, "test");
            entries.add(ledger.records().newest());
            Ledger.rebuild(other, ledger.id(), entries);
            try (Ledger anew = Ledger.open(other)) {
                assertThat(anew.versions("SB-2")).allMatch(JobVersion::forgotten);
                assertThat(all(anew, "progress")).isEqualTo(all(ledger, "progress"));
                assertThat(anew.claimsOf("SB-2")).noneMatch(ClaimState::active);
                assertThat(anew.claimsOf("SB-3")).allMatch(ClaimState::active);
            }
        }
    }

    @Test
    void oneThatTakesOverHasHowFarEachBatchHasComeToo() {
        LedgerPlace other = new LedgerPlace.InFile(folder.resolve("taken.db"));
        try (Ledger ledger = full()) {
            ledger.batches().noteFiled("one");
            ledger.takenOverBy(other);
            try (Ledger taken = Ledger.open(other)) {
                assertThat(all(taken, "")).isEqualTo(all(ledger, ""));
            }
        }
    }

    /** Who the ledger of an office of that time was. */
    private static LedgerId id(int schema) throws IOException {
        Path advice = WRITTEN.resolve("version-" + schema + "/advices/advice-2.json");
        return EntryFile.read(advice).orElseThrow().ledger();
    }

    /** The entries as they lie beside its batches and advices. */
    private static List<EntryRecord> written(int schema) throws IOException {
        Path office = WRITTEN.resolve("version-" + schema);
        List<EntryRecord> all = new ArrayList<>();
        for (String folder : List.of("packs/2026-11-26-one", "packs/2026-11-26-two")) {
            Path batch = office.resolve(folder);
            byte[] manifest = Files.readAllBytes(batch.resolve("manifest.json"));
            EntryRecord entry = EntryFile.read(batch.resolve("ledger.json")).orElseThrow().entry();
            all.add(entry.withDetail(DigestUtils.sha256Hex(manifest)));
        }
        all.add(1, EntryFile.read(office.resolve("advices/advice-2.json")).orElseThrow().entry());
        return all;
    }

    private Path rebuilt(String name, LedgerId id, List<EntryRecord> entries) {
        Path file = folder.resolve(name);
        Ledger.rebuild(new LedgerPlace.InFile(file), id, entries);
        return file;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void entriesOfAnOlderSchemaMakeALedgerOfTodaysThatKnowsThem(int version) throws IOException {
        List<EntryRecord> entries = written(version);
        try (Ledger anew = Ledger.open(rebuilt("anew.db", id(version), entries))) {
            assertThat(anew.claims(LocalDate.of(2026, 12, 31)))
                    .extracting(c -> c.reference() + " " + c.received())
                    .containsExactly(
                            "J-1-STC $504.00", "J-3-STC $0.00", "J-2-STC $0.00", "J-4-STC $0.00");
            assertThat(entries)
                    .extracting(entry -> anew.records().knows(entry))
                    .containsOnly(Records.Knows.SAME);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void anEntryOfAnOlderSchemaThatDoesNotFollowOrIsNotAsItWasWrittenIsRefused(int place)
            throws IOException {
        EntryRecord entry = written(2).get(place);
        EntryRecord moved = EntryRecordBuilder.builder(entry).before("00").build();
        EntryRecord changed = EntryRecordBuilder.builder(entry).rowsSha256("00").build();
        for (EntryRecord other : List.of(moved, changed)) {
            List<EntryRecord> entries = written(2);
            entries.set(place, other);
            String name = other == moved ? "moved.db" : "changed.db";
            assertThatThrownBy(() -> rebuilt(name, id(2), entries))
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("Entry " + entry.seq() + " ")
                    .hasMessageContaining("does not fit");
        }
    }
}
