package paperbark.ledger;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.job.Register;
import paperbark.value.SchemeName;

/** A ledger in a file, and what is done to the file. */
class LedgerFileTest {
    @TempDir private Path folder;

    private Path file;

    @BeforeEach
    void makeOne() {
        file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.parse("2026-11-23T00:00:00Z"));
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
    void aFileIsExpectedToBeALedgerOnceItIsThere() {
        LedgerPlace place = new LedgerPlace.InFile(folder.resolve("made.db"));
        assertThat(place.isExpected()).isFalse();
        Entries.create(folder.resolve("made.db"), Instant.EPOCH);
        assertThat(place.isExpected()).isTrue();
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
    void aRuleOfTheTablesThatIsGoneIsNoticedThoughEveryRowIsAsItWas() {
        change("DROP INDEX serial_once");
        try (Ledger ledger = Ledger.open(file)) {
            assertThatThrownBy(ledger::verify)
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("tables and indices");
        }
    }

    @Test
    void aLedgerThatNoLongerSaysWhoItIsIsNotAsItWasWrittenAndCanBeMadeAnew() {
        change("DELETE FROM office");
        try (Ledger ledger = Ledger.open(file)) {
            assertThatThrownBy(ledger::id)
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("not as it was written")
                    .hasMessageContaining("ledger-rebuild");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE serial SET active = 0",
                "UPDATE claim SET active = 0",
                "DELETE FROM progress",
            })
    void whatIsActiveIsNoticedThoughNoSealCoversIt(String statement) {
        try (Ledger ledger = Ledger.open(file)) {
            Entries.enter(
                    ledger,
                    Entries.batch(
                            "one",
                            Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
            ledger.verify();
        }
        change(statement);
        try (Ledger ledger = Ledger.open(file)) {
            assertThatThrownBy(ledger::verify)
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("what is active");
        }
    }

    @Test
    void aSecondLedgerNeverTakesTheFirstOnesPlace() throws IOException {
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Entries.create(file, Instant.EPOCH))
                .isInstanceOf(LedgerException.class);
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void onlyItsOwnerMayReadItAndItsKey() throws IOException {
        assertThat(Files.getPosixFilePermissions(file)).hasSize(2);
        assertThat(Files.getPosixFilePermissions(folder.resolve("paperbark.key"))).hasSize(2);
    }

    @Test
    void twoLedgersHaveTwoKeysAndOneThatIsTakenOverKeepsItsOwn() throws IOException {
        Path second = folder.resolve("second.db");
        Entries.create(second, Instant.EPOCH);
        Path key = folder.resolve("paperbark.key");
        assertThat(folder.resolve("second.key")).isRegularFile();
        assertThat(Files.readString(folder.resolve("second.key")))
                .isNotEqualTo(Files.readString(key));
        try (Ledger ledger = Ledger.open(file)) {
            ledger.takenOverBy(new LedgerPlace.InFile(folder.resolve("third.db")));
        }
        assertThat(folder.resolve("third.key")).hasSameTextualContentAs(key);
    }

    @Test
    void aCopyOfTheLedgerHoldsNoKey() throws IOException {
        Path copies = Files.createDirectory(folder.resolve("backups"));
        try (Ledger ledger = Ledger.open(file)) {
            ledger.copyTo(copies.resolve("copy.db"));
        }
        byte[] key = Files.readString(folder.resolve("paperbark.key")).strip().getBytes(UTF_8);
        assertThat(copies).isDirectoryNotContaining(f -> f.toString().endsWith(".key"));
        assertThat(Files.readString(copies.resolve("copy.db"), ISO_8859_1))
                .doesNotContain(new String(key, UTF_8));
    }

    @Test
    void aKeyThatIsGoneIsBegunAnewAndKept() throws IOException {
        Path key = folder.resolve("paperbark.key");
        String before = Files.readString(key);
        Files.delete(key);
        String first;
        try (Ledger ledger = Ledger.open(file)) {
            first = ledger.prints(Register.job("Job\nT-1\n")).key();
        }
        assertThat(Files.readString(key)).isNotEqualTo(before).hasSize(65);
        assertThat(Files.getPosixFilePermissions(key)).hasSize(2);
        try (Ledger ledger = Ledger.open(file)) {
            assertThat(ledger.prints(Register.job("Job\nT-1\n")).key()).isEqualTo(first);
        }
    }

    @Test
    void aDamagedKeyIsNamedAndNotReplaced() throws IOException {
        Path key = Files.writeString(folder.resolve("paperbark.key"), "ab\n");
        try (Ledger ledger = Ledger.open(file)) {
            assertThatThrownBy(() -> ledger.prints(Register.job("Job\nT-1\n")))
                    .isInstanceOf(LedgerException.class)
                    .hasMessageContaining("paperbark.key");
        }
        assertThat(key).hasContent("ab");
    }
}
