package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.codec.digest.DigestUtils;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What somebody may do to the rows of a ledger so that a careless reader would not see it. */
class ChainTest {
    @TempDir private Path folder;

    private Path file;

    @BeforeEach
    void aLedgerOfTwoBatchesAndAnAdvice() {
        file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        try (Ledger ledger = Ledger.open(file)) {
            Entries.enter(ledger, Entries.batch("one", job("A-1"), job("A\u001f2"), job("A-3")));
            Entries.enter(ledger, Entries.batch("two", job("B-1"), job("B\u00002")));
            ledger.settle(
                    Entries.advice("33"),
                    book ->
                            book.enter(
                                    new AdviceLine(
                                            "key", 2, Entries.DAY, Money.of("-5.00"), "A-1")));
            ledger.verify();
        }
    }

    private static JobEntry job(String reference) {
        return Entries.job(
                reference,
                Entries.claim(
                        SchemeName.STC, "T-" + reference.replaceAll("[^A-Z0-9]", "0"), "504.00"));
    }

    private void change(String... statements) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement run = connection.createStatement()) {
            for (String statement : statements) {
                run.execute(statement);
            }
        } catch (SQLException e) {
            throw new IllegalStateException(String.join("; ", statements), e);
        }
    }

    /** While the tables take cells of any type and without a value; afterwards nobody sees that. */
    private void changeWithoutRules(String... statements) {
        change(
                Stream.of(
                                Stream.of(
                                        "CREATE TEMP TABLE rules AS SELECT name, sql FROM sqlite_master",
                                        "PRAGMA writable_schema = ON",
                                        "UPDATE sqlite_master SET sql = replace(replace(sql,"
                                                + " ' NOT NULL', ''), ') STRICT', ')')",
                                        "PRAGMA writable_schema = RESET"),
                                Stream.of(statements),
                                Stream.of(
                                        "PRAGMA writable_schema = ON",
                                        "UPDATE sqlite_master SET sql = (SELECT r.sql FROM rules r"
                                                + " WHERE r.name = sqlite_master.name)",
                                        "PRAGMA writable_schema = RESET"))
                        .flatMap(all -> all)
                        .toArray(String[]::new));
    }

    private void noticedAt(String where) {
        try (Ledger ledger = Ledger.open(file)) {
            assertThatThrownBy(() -> new Chain(ledger.sql()).verify())
                    .isInstanceOf(LedgerException.class)
                    .hasMessageStartingWith(
                            "The ledger is not as it was written, at \"" + where + "\".");
        }
    }

    @Test
    void theDatabaseJoinsTheCellsOfARowAsTheSealsDo() {
        try (Ledger ledger = Ledger.open(file)) {
            Map<Long, String> digests = ledger.records().rowDigests(1, 3);
            assertThat(digests).hasSize(3);
            for (EntryRecord entry : ledger.records().all()) {
                assertThat(digests.get(entry.seq()))
                        .isEqualTo(Seals.rows(entry))
                        .isEqualTo(entry.rowsSha256());
            }
        }
    }

    /** Of ledgers in the field nobody asks for other digests, whatever way they are made. */
    @Test
    void theDigestIsOverCellsRowsAndTablesWithTheirOwnSigns() {
        EntryRecord entry =
                EntryRecordBuilder.builder()
                        .schema(4)
                        .kind("batch")
                        .rows(
                                Map.of(
                                        "withdrawn",
                                        List.of(
                                                List.of("K", "1", "a"),
                                                List.of("L", "2", "\u00e9")),
                                        "withdrawal",
                                        List.of(List.of("7", "b"))))
                        .build();
        assertThat(Seals.rows(entry))
                .isEqualTo(
                        DigestUtils.sha256Hex(
                                "\n\n".repeat(5)
                                        + "K\u001f1\u001fa\u001f\nL\u001f2\u001f\u00e9\u001f"
                                        + "\n\n".repeat(4)
                                        + "7\u001fb\u001f"
                                        + "\n\n".repeat(2)));
    }

    @ParameterizedTest
    @CsvSource({
        "one, DELETE FROM serial WHERE claim = 2",
        "one, DELETE FROM paper WHERE job_key = 'A-3'",
        "one, 'INSERT INTO withdrawn VALUES (1, ''A-1'', 1, '''')'",
        "one, UPDATE job SET entry = 2 WHERE job_key = 'A-1'",
        "two, UPDATE job SET reference = reference || char(0) WHERE job_key = 'B-1'",
        "two, 'UPDATE job SET reference = substr(CAST(reference AS BLOB), 1, 1) || ''''"
                + " WHERE hex(reference) = ''420032'''",
        "one, 'UPDATE job SET reference = reference || char(31), outcome = outcome"
                + " WHERE job_key = ''A-1'''",
        "one, 'UPDATE job SET reference = ''A'', pack = ''2'' || char(31) || pack"
                + " WHERE hex(reference) = ''411F32'''",
        "one, 'UPDATE claim SET id = 99 WHERE id = 1; UPDATE claim SET id = 1 WHERE id = 2'",
        "advice-3, UPDATE line SET cents = 500",
        "advice-3, UPDATE line SET source_row = 02 + 1",
        "personal, 'UPDATE personal SET salt = salt || ''x'' WHERE job_key = ''A-1'''",
    })
    void aRowThatIsGoneNewElsewhereOrOtherwiseIsNoticedAtItsEntry(String where, String statement) {
        change(statement.split("; "));
        noticedAt(where.equals("personal") ? "what is personal" : where);
    }

    @ParameterizedTest
    @ValueSource(longs = {-1, 0, 4, 9_000})
    void aRowOfNoEntryIsNoticed(long entry) {
        change("INSERT INTO line VALUES (77, " + entry + ", 'k', 2, '2026-11-23', 9, 'A-1')");
        noticedAt("line");
    }

    @Test
    void aRowInALedgerWithoutEntriesIsNoticed() {
        file = folder.resolve("empty.db");
        Entries.create(file, Instant.EPOCH);
        change("INSERT INTO line VALUES (1, 1, 'k', 2, '2026-11-23', 9, 'A-1')");
        noticedAt("line");
    }

    /** No table takes a cell without a value; the proof does not lean on that. */
    @ParameterizedTest
    @CsvSource({
        "one, 'INSERT INTO withdrawn VALUES (1, ''A-1'', 1, NULL)'",
        "one, UPDATE claim SET due = NULL WHERE id = 1",
        "two, UPDATE personal SET seal = NULL WHERE job_key = 'B-1'",
        "what is personal, UPDATE personal SET site_key = NULL WHERE job_key = 'B-1'",
        "what is personal, UPDATE personal SET salt = NULL WHERE job_key = 'B-1'",
        "what is forgotten, 'UPDATE personal SET salt = '''', prints = '''', print_key = '''',"
                + " site_key = '''' WHERE job_key = ''B-1'''",
    })
    void aCellWithoutAValueIsNoticed(String where, String statement) {
        changeWithoutRules(statement);
        noticedAt(where);
    }

    @Test
    void whatIsForgottenIsEmptyAndNotWithoutAValue() {
        try (Ledger ledger = Ledger.open(file)) {
            ledger.forget("B-1", Entries.DAY, Instant.EPOCH, "test");
            ledger.verify();
        }
        changeWithoutRules("UPDATE personal SET prints = NULL WHERE job_key = 'B-1'");
        noticedAt("what is forgotten");
    }

    @Test
    void aNumberThatIsNoNumberAnyMoreIsNoticedThoughItLooksTheSame() {
        changeWithoutRules();
        try (Ledger ledger = Ledger.open(file)) {
            ledger.verify();
        }
        changeWithoutRules("UPDATE claim SET certificates = CAST(certificates AS BLOB)");
        try (Ledger ledger = Ledger.open(file)) {
            assertThatThrownBy(ledger::verify)
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("damaged");
        }
    }
}
