package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** What a batch's claims do to claims that stand. */
class RecorderTest {
    @TempDir private Path folder;

    private Ledger ledger;

    @BeforeEach
    void open() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
    }

    @AfterEach
    void close() {
        ledger.verify();
        ledger.close();
    }

    private static ClaimEntry claim(SchemeName scheme, String... serials) {
        ClaimEntry claim = Entries.claim(scheme, serials[0], "504.00");
        return new ClaimEntry(
                claim.scheme(),
                claim.buyer(),
                claim.certificates(),
                claim.installedOn(),
                claim.lodgeBy(),
                List.of(serials).stream()
                        .map(s -> Serial.parse(s).toOptional().orElseThrow())
                        .toList(),
                claim.promise());
    }

    private void batch(String name, JobEntry job) {
        Entries.enter(ledger, Entries.batch(name, job));
    }

    private List<String> standing() {
        return ledger.claims(Entries.DAY).stream()
                .map(c -> c.reference() + " of " + c.batch())
                .toList();
    }

    @Test
    void aClaimOfSeveralPartsStaysAsLongAsTheyStandInTheSameOrder() {
        batch("one", Entries.job("T-1", claim(SchemeName.STC, "T-100", "HP-1", "C-700")));
        batch("two", Entries.job("T-1", claim(SchemeName.STC, "T-100", "HP-1", "C-700")));
        assertThat(standing()).containsExactly("T-1-STC of one");
        batch("three", Entries.job("T-1", claim(SchemeName.STC, "T-100", "C-700", "HP-1")));
        assertThat(standing()).containsExactly("T-1-STC of three");
    }

    @Test
    void whoTakesAJobsPlaceTakesAwayAllOfItsClaimsAndNoOthers() {
        JobEntry both =
                Entries.job("T-1", claim(SchemeName.STC, "T-100"), claim(SchemeName.VEEC, "T-100"));
        batch("one", both);
        batch("two", Entries.job("T-2", claim(SchemeName.STC, "T-200")));
        JobEntry next = Entries.job("T-3", claim(SchemeName.STC, "T-300"));
        batch("three", Entries.correcting("T-1", next));
        assertThat(standing()).containsExactly("T-2-STC of two", "T-3-STC of three");
        assertThat(ledger.claimsOf("T-1")).hasSize(2).noneMatch(ClaimState::active);
    }

    @Test
    void aJobThatNamesItselfKeepsItsClaim() {
        batch("one", Entries.job("T-1", claim(SchemeName.STC, "T-100")));
        batch("two", Entries.correcting("T-1", Entries.job("T-1", claim(SchemeName.STC, "T-100"))));
        assertThat(standing()).containsExactly("T-1-STC of one");
    }

    @Test
    void aSerialGoesOverFromAJobWhoseNumberHasASpace() {
        batch("one", Entries.job("T 1", claim(SchemeName.STC, "T-100")));
        batch("two", Entries.correcting("T 1", Entries.job("T-2", claim(SchemeName.STC, "T-100"))));
        assertThat(standing()).containsExactly("T-2-STC of two");
    }

    @Test
    void whoTakesThePlaceOfAJobWhoseNumberHasASpaceTakesAwayAllOfItsClaims() {
        batch(
                "one",
                Entries.job(
                        "T 1", claim(SchemeName.STC, "T-100"), claim(SchemeName.VEEC, "T-100")));
        batch("two", Entries.job("1", claim(SchemeName.STC, "T-200")));
        batch(
                "three",
                Entries.correcting("T 1", Entries.job("T-3", claim(SchemeName.STC, "T-300"))));
        assertThat(standing()).containsExactly("1-STC of two", "T-3-STC of three");
    }
}
