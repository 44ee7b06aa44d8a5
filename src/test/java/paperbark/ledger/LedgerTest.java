package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.firm.SchemeName;
import paperbark.value.Money;

class LedgerTest {
    @TempDir private Path folder;

    private Path file;

    @BeforeEach
    void makeOne() {
        file = folder.resolve("paperbark.db");
        Ledger.create(file, Instant.parse("2026-11-23T00:00:00Z"));
    }

    private void enter(BatchEntry batch) {
        try (Ledger ledger = Ledger.open(file)) {
            ledger.enter(batch);
        }
    }

    private List<ClaimState> claims() {
        try (Ledger ledger = Ledger.open(file)) {
            ledger.verify();
            return ledger.claims(LocalDate.of(2027, 6, 30));
        }
    }

    private void change(String statement) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement run = connection.createStatement()) {
            run.execute(statement);
        } catch (SQLException e) {
            throw new IllegalStateException(statement, e);
        }
    }

    @Test
    void whatWasTakenInIsFoundAgain() {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        ClaimState claim = claims().get(0);
        assertThat(claim.reference()).isEqualTo("SB-1-STC");
        assertThat(claim.expected()).isEqualTo(Money.of("504.00"));
        assertThat(claim.outstanding()).isEqualTo(Money.of("504.00"));
        assertThat(claim.due()).contains(LocalDate.of(2026, 11, 30));
        assertThat(claim.batch()).isEqualTo("one");
    }

    @Test
    void aMissingOrEmptyFileIsNeverTakenForANewLedger() throws IOException {
        assertThatThrownBy(() -> Ledger.open(folder.resolve("other.db")))
                .isInstanceOf(LedgerException.class);
        assertThat(folder.resolve("other.db")).doesNotExist();
        Path empty = Files.createFile(folder.resolve("empty.db"));
        assertThatThrownBy(() -> Ledger.open(empty)).isInstanceOf(LedgerException.class);
        assertThat(empty).isEmptyFile();
    }

    @Test
    void anotherProgramsFileAndANewerLedgerAreRefused() throws IOException {
        Path text = Files.writeString(folder.resolve("text.db"), "not a database at all");
        assertThatThrownBy(() -> Ledger.open(text)).isInstanceOf(LedgerException.class);
        assertThat(text).hasContent("not a database at all");
        change("PRAGMA user_version = 99");
        assertThatThrownBy(() -> Ledger.open(file))
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("newer version");
    }

    @Test
    void aSecondLedgerNeverTakesTheFirstOnesPlace() throws IOException {
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Ledger.create(file, Instant.EPOCH))
                .isInstanceOf(LedgerException.class);
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void onlyItsOwnerMayReadIt() throws IOException {
        assertThat(Files.getPosixFilePermissions(file)).hasSize(2);
    }

    @Test
    void aClaimThatSaysTheSameStaysAndOneThatDiffersTakesItsPlace() {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        enter(
                Entries.batch(
                        "two",
                        Entries.job("sb-1", Entries.claim(SchemeName.STC, "T 100", "504.00"))));
        assertThat(claims()).extracting(ClaimState::batch).containsExactly("one");
        enter(
                Entries.batch(
                        "three",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-101", "504.00"))));
        assertThat(claims()).extracting(ClaimState::batch).containsExactly("three");
    }

    @Test
    void aSerialIsClaimedForOneJobOnlyUnlessTheOtherOneCorrectsIt() {
        JobEntry second = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        assertThatThrownBy(() -> enter(Entries.batch("two", second)))
                .isInstanceOf(LedgerBusyException.class)
                .hasMessageContaining("job SB-1");
        assertThat(claims()).extracting(ClaimState::job).containsExactly("SB-1");
        enter(Entries.batch("two", Entries.correcting("SB-1", second)));
        assertThat(claims()).extracting(ClaimState::job).containsExactly("SB-2");
    }

    @Test
    void aBatchThatFailsHalfWayLeavesNothing() throws IOException {
        JobEntry good = Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        JobEntry clash = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        assertThatThrownBy(() -> enter(Entries.batch("one", good, clash)))
                .isInstanceOf(LedgerBusyException.class);
        assertThat(claims()).isEmpty();
        try (Ledger ledger = Ledger.open(file)) {
            assertThat(ledger.unpublished()).isEmpty();
        }
    }

    /** Every column of every table, so that none can be added and left out of the seals. */
    @Test
    void aChangeOfAnySingleValueIsNoticed() throws IOException, SQLException {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        enter(
                Entries.batch(
                        "two",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-101", "504.00"))));
        try (Ledger ledger = Ledger.open(file)) {
            ledger.settle(
                    Entries.advice("33"),
                    book -> {
                        AdviceLine line =
                                new AdviceLine(
                                        "key", 2, Entries.DAY, Money.of("504.00"), "SB-1-STC");
                        ClaimState claim = book.byReference("sb-1-stc").get(0);
                        return book.match(
                                book.enter(line),
                                line,
                                claim,
                                Happening.PAID,
                                line.amount(),
                                "reference",
                                "",
                                "K1");
                    });
        }
        byte[] sound = Files.readAllBytes(file);
        Set<String> mutable = Set.of("progress.state", "progress.staged", "office.schema_version");
        List<String> unnoticed = new ArrayList<>();
        int tried = 0;
        for (String column : columns()) {
            String table = column.substring(0, column.indexOf('.'));
            String name = column.substring(column.indexOf('.') + 1);
            if (mutable.contains(column)) {
                continue;
            }
            Files.write(file, sound);
            // Foreign keys and checks are off in the hands of whoever changes a ledger unseen.
            change("PRAGMA ignore_check_constraints = ON");
            changeUnchecked(table, name);
            tried++;
            try (Ledger ledger = Ledger.open(file)) {
                ledger.verify();
                unnoticed.add(column);
            } catch (LedgerException noticed) {
                assertThat(noticed).hasMessageMatching("(?s).*(not as it was written|damaged).*");
            }
        }
        assertThat(unnoticed).isEmpty();
        assertThat(tried).isGreaterThan(50);
    }

    private List<String> columns() throws SQLException {
        List<String> columns = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement run = connection.createStatement();
                var rows =
                        run.executeQuery(
                                "SELECT t.name || '.' || c.name FROM sqlite_master t, pragma_table_info(t.name) c"
                                        + " WHERE t.type = 'table'")) {
            while (rows.next()) {
                columns.add(rows.getString(1));
            }
        }
        return columns;
    }

    private void changeUnchecked(String table, String column) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement run = connection.createStatement()) {
            run.execute("PRAGMA ignore_check_constraints = ON");
            run.execute(
                    "UPDATE %1$s SET %2$s = CASE typeof(%2$s) WHEN 'integer' THEN %2$s + 7 ELSE %2$s || 'x' END"
                                    .formatted(table, column)
                            + " WHERE rowid = (SELECT max(rowid) FROM %s)".formatted(table));
        } catch (SQLException e) {
            throw new IllegalStateException(table + "." + column, e);
        }
    }

    @Test
    void aRowTakenAwayOrAnEntryLeftOutIsNoticed() {
        enter(
                Entries.batch(
                        "one",
                        Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        enter(
                Entries.batch(
                        "two",
                        Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "504.00"))));
        change("DELETE FROM sale WHERE job_key = 'SB-2'");
        assertThatThrownBy(this::claims)
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("\"two\"");
    }
}
