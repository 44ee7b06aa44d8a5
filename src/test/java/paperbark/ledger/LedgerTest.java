package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.firm.SchemeName;
import paperbark.value.Money;

/** What a ledger does, wherever it is; see also {@link LedgerOnServerTest}. */
class LedgerTest {
    @TempDir private Path folder;

    private LedgerPlace place;

    @BeforeEach
    void makeOne() {
        place = place(folder);
        Ledger.create(place, Instant.parse("2026-11-23T00:00:00Z"));
    }

    LedgerPlace place(Path folder) {
        return new LedgerPlace.InFile(folder.resolve("paperbark.db"));
    }

    private void enter(BatchEntry batch) {
        try (Ledger ledger = Ledger.open(place)) {
            ledger.enter(batch);
        }
    }

    private List<ClaimState> claims() {
        try (Ledger ledger = Ledger.open(place)) {
            ledger.verify();
            return ledger.claims(LocalDate.of(2027, 6, 30));
        }
    }

    /** Changes the ledger behind the program's back. */
    void change(String statement) {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + place);
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
                .isInstanceOf(LedgerException.class)
                .hasMessageContaining("job SB-1");
        assertThat(claims()).extracting(ClaimState::job).containsExactly("SB-1");
        enter(Entries.batch("two", Entries.correcting("SB-1", second)));
        assertThat(claims()).extracting(ClaimState::job).containsExactly("SB-2");
    }

    @Test
    void aBatchThatFailsHalfWayLeavesNothing() {
        JobEntry good = Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        JobEntry clash = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        assertThatThrownBy(() -> enter(Entries.batch("one", good, clash)))
                .isInstanceOf(LedgerException.class);
        assertThat(claims()).isEmpty();
        try (Ledger ledger = Ledger.open(place)) {
            assertThat(ledger.unpublished()).isEmpty();
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
