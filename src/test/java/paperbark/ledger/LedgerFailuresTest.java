package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.sqlite.NativeLibraryNotFoundException;

/** What a failure of the database means, and what each connection to it promises. */
class LedgerFailuresTest {
    @TempDir private Path folder;

    private LedgerFile ledger() {
        return new LedgerFile(new LedgerPlace.InFile(folder.resolve("paperbark.db")));
    }

    private static SQLException error(int code) {
        return new SQLException("what the database said", null, code);
    }

    // The numbers stand in https://sqlite.org/rescode.html: full, input or output, cannot be
    // opened,
    // and input or output while reading, which goes beyond a byte.
    @ParameterizedTest
    @ValueSource(ints = {13, 10, 14, 266})
    void theDisksFailuresAreNoneOfTheLedger(int code) {
        assertThat(ledger().failed(error(code)))
                .isInstanceOf(UncheckedIOException.class)
                .hasRootCauseMessage("what the database said");
        assertThat(ledger().failedToCommit(error(code))).isInstanceOf(UncheckedIOException.class);
    }

    // Busy, and busy with a transaction that another process left.
    @ParameterizedTest
    @ValueSource(ints = {5, 261})
    void whoWaitsTooLongIsToldThatAnotherProgramWrites(int code) {
        assertThat(ledger().failed(error(code)))
                .isInstanceOf(LedgerBusyException.class)
                .hasMessageContaining("Another program is writing");
    }

    // Damaged, no database, and an index that is damaged; then a broken rule of a table.
    @ParameterizedTest
    @CsvSource({"11, true", "26, true", "779, true", "19, false", "2067, false"})
    void onlyADamagedLedgerIsToBeMadeAnew(int code, boolean damaged) {
        RuntimeException failed = ledger().failed(error(code));
        assertThat(failed).isInstanceOf(LedgerException.class);
        assertThat(failed.getMessage().contains("ledger-rebuild")).isEqualTo(damaged);
        assertThat(failed.getMessage().contains("report this")).isEqualTo(!damaged);
    }

    @Test
    void aLibraryThatCannotBeLaidDownIsTheFolderForTemporaryFiles() {
        SQLException failure =
                new SQLException("no library", new NativeLibraryNotFoundException("not there"));
        assertThat(ledger().failed(failure))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessageContaining("temporary files");
    }

    @Test
    void whatTheDriverAddedSaysMore() {
        SQLException failure = error(1);
        failure.setNextException(new SQLException("the reason"));
        assertThat(ledger().failed(failure)).hasMessageContaining("(the reason)");
    }

    /**
     * Journal gone with each commit, everything forced, foreign keys held, nothing readable left.
     */
    @ParameterizedTest
    @CsvSource({
        "journal_mode, delete",
        "synchronous, 3",
        "fullfsync, 1",
        "foreign_keys, 1",
        "busy_timeout, 5000",
        "trusted_schema, 0",
        "secure_delete, 1"
    })
    void eachConnectionKeepsWhatThisProgramPromises(String setting, String value)
            throws SQLException {
        LedgerFile ledger = ledger();
        ledger.create(new LedgerId("id", Instant.EPOCH.toString()), sql -> {});
        try (Connection connection = ledger.open()) {
            Sql sql = new Sql(connection, ledger);
            assertThat(sql.first("PRAGMA " + setting, r -> r.getString(1))).contains(value);
        }
    }

    @Test
    void whatFailsWithinATransactionLeavesEverythingAsItWas() throws SQLException {
        LedgerFile ledger = ledger();
        ledger.create(new LedgerId("id", Instant.EPOCH.toString()), sql -> {});
        try (Connection connection = ledger.open()) {
            Sql sql = new Sql(connection, ledger);
            Runnable cut =
                    () ->
                            sql.whole(
                                    () -> {
                                        sql.run("UPDATE office SET id = 'another'");
                                        throw new UncheckedIOException(new IOException("cut"));
                                    });
            assertThatThrownBy(cut::run).isInstanceOf(UncheckedIOException.class);
            assertThat(new Records(sql).office().id()).isEqualTo("id");
            // The next one begins as if nothing had been.
            assertThat(sql.<String>whole(() -> new Records(sql).office().id())).isEqualTo("id");
        }
    }
}
