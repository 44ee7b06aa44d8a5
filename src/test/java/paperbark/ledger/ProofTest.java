package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProofTest {
    @TempDir private Path folder;

    private Path file;
    private final Proof proof = new Proof();

    @BeforeEach
    void aLedgerOfOneEntryThatIsProved() {
        file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        enter("one", "SB-1");
        prove();
        // From here on whoever proves it whole finds it changed.
        change("UPDATE job SET pack = 'elsewhere'");
    }

    private void enter(String batch, String job) {
        try (Ledger ledger = Ledger.open(file)) {
            Entries.enter(ledger, Entries.batch(batch, Entries.job(job)));
        }
    }

    private void prove() {
        try (Ledger ledger = Ledger.open(file)) {
            proof.of(ledger);
        }
    }

    private void change(String statement) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement run = connection.createStatement()) {
            run.execute(statement);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void whatEndsAsItWasSeenIsNotProvedAgain() {
        assertThatCode(this::prove).doesNotThrowAnyException();
    }

    @Test
    void anotherProcessProvesItWhole() {
        try (Ledger ledger = Ledger.open(file)) {
            assertThatThrownBy(() -> new Proof().of(ledger)).isInstanceOf(LedgerException.class);
        }
    }

    @Test
    void anEntryOfAnotherProgramHasItProvedWhole() {
        enter("two", "SB-2");
        assertThatThrownBy(this::prove).isInstanceOf(LedgerException.class);
    }

    @Test
    void anEntryOfOurOwnHasNot() {
        try (Ledger ledger = Ledger.open(file)) {
            Entries.enter(ledger, Entries.batch("two", Entries.job("SB-2")));
            proof.grew(ledger);
        }
        assertThatCode(this::prove).doesNotThrowAnyException();
    }

    @Test
    void anEntryOfOurOwnUponAnothersHasItProvedWhole() {
        enter("two", "SB-2");
        try (Ledger ledger = Ledger.open(file)) {
            Entries.enter(ledger, Entries.batch("three", Entries.job("SB-3")));
            proof.grew(ledger);
        }
        assertThatThrownBy(this::prove).isInstanceOf(LedgerException.class);
    }

    @Test
    void whatIsForgottenIsProvedAgain() {
        proof.forget();
        assertThatThrownBy(this::prove).isInstanceOf(LedgerException.class);
    }
}
