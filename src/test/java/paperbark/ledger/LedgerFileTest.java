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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A ledger in a file, and what is done to the file. */
class LedgerFileTest {
    @TempDir private Path folder;

    private Path file;

    @BeforeEach
    void makeOne() {
        file = folder.resolve("paperbark.db");
        Ledger.create(file, Instant.parse("2026-11-23T00:00:00Z"));
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
}
