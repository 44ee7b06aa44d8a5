package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.value.SchemeName;

/** What is said of a job whose serial or site another job claimed. */
class ConflictsTest {
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
        ledger.close();
    }

    /** Claims a serial for another job under schemes. */
    private void claimed(String reference, String serial, SchemeName... schemes) {
        ClaimEntry[] claims = new ClaimEntry[schemes.length];
        for (int i = 0; i < schemes.length; i++) {
            claims[i] = Entries.claim(schemes[i], serial, "504.00");
        }
        Entries.enter(ledger, Entries.batch("one", Entries.job(reference, claims)));
    }

    private static Job job(String headings, String cells) {
        return Register.job("Job,Claim STCs," + headings + "\nT-1,yes," + cells + "\n");
    }

    private List<Finding> findings(Job job) {
        return HistoryCheck.of(job, ledger.history(job), Map.of());
    }

    @Test
    void aSerialThatAnotherJobClaimedIsOneStopForBothSchemes() {
        claimed("SB-1", "T-100", SchemeName.STC, SchemeName.VEEC);
        Job job = job("Tank serial,Heat pump serial", "T-100,HP-1");
        assertThat(findings(job))
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.SERIAL_CLAIMED_BEFORE);
                            assertThat(f.severity()).isEqualTo(Severity.STOP);
                            assertThat(f.fact())
                                    .contains("job SB-1 on 23 Nov 2026 (batch one, STC and VEEC)");
                            assertThat(f.where()).contains(Field.TANK_SERIAL.label());
                            assertThat(f.job()).contains("T-1");
                        });
    }

    @Test
    void theCellIsTheOneThatHoldsTheSerial() {
        claimed("SB-1", "HP-1", SchemeName.STC);
        assertThat(findings(job("Tank serial,Heat pump serial", "T-100,HP-1")))
                .singleElement()
                .satisfies(f -> assertThat(f.where()).contains(Field.HEAT_PUMP_SERIAL.label()));
        assertThat(findings(job("Tank serial,Collector serials", "T-100,HP-1")))
                .singleElement()
                .satisfies(f -> assertThat(f.where()).contains(Field.COLLECTOR_SERIALS.label()));
    }

    @Test
    void aSerialThatIsEasilyReadForAnotherIsACheckThatNamesBoth() {
        claimed("SB-1", "T-1O0", SchemeName.STC);
        assertThat(findings(job("Tank serial", "T-100")))
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.SERIAL_LIKE_CLAIMED);
                            assertThat(f.seen()).contains("T-100");
                            assertThat(f.fact()).contains("T-1O0");
                        });
    }

    @Test
    void aSiteThatAnotherJobClaimedIsSaid() {
        Job job = job("Tank serial", "T-200");
        JobEntry other = Entries.job("SB-1", Entries.claim(SchemeName.STC, "T-100", "504.00"));
        Entries.enter(
                ledger,
                Entries.batch("one", Entries.at(Keys.site(job.site()).orElseThrow(), other)));
        assertThat(findings(job))
                .singleElement()
                .satisfies(
                        f -> {
                            assertThat(f.code()).isEqualTo(FindingCode.SITE_CLAIMED_BEFORE);
                            assertThat(f.fact()).contains("job SB-1", "batch one, STC");
                        });
        assertThat(findings(job("Tank serial,Site position", "T-200,behind the shed"))).isEmpty();
    }

    @Test
    void anotherJobsSerialAndAnothersSiteAreTwoFindings() {
        Job job = job("Tank serial", "T-100");
        String site = Keys.site(job.site()).orElseThrow();
        JobEntry other = Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-200", "504.00"));
        Entries.enter(ledger, Entries.batch("zero", Entries.at(site, other)));
        claimed("SB-1", "T-100", SchemeName.STC);
        assertThat(findings(job))
                .extracting(Finding::code)
                .containsExactlyInAnyOrder(
                        FindingCode.SERIAL_CLAIMED_BEFORE, FindingCode.SITE_CLAIMED_BEFORE);
    }

    @Test
    void ofWhatIsSaidToBeCorrectedTheWordsThatAreKnownAreJobs() {
        assertThat(
                        Keys.named(
                                Optional.of("(replaces sb-1, SB-2; sb-1)"),
                                Set.of("SB-1", "SB-2", "SB-3")::contains))
                .containsExactly("SB-1", "SB-2");
        assertThat(Keys.named(Optional.empty(), word -> true)).isEmpty();
    }

    @Test
    void aJobThatClaimsNothingCollidesWithNothing() {
        claimed("SB-1", "T-100", SchemeName.STC);
        assertThat(findings(Register.job("Job,Tank serial\nT-1,T-100\n"))).isEmpty();
    }

    @Test
    void whoSaysWhatItCorrectsIsToldAndNotStopped() {
        claimed("SB-1", "T-100", SchemeName.STC);
        assertThat(findings(job("Tank serial,Corrects", "T-100,sb-1")))
                .singleElement()
                .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.CHECK));
        assertThat(findings(job("Tank serial,Corrects", "T-100,SB-2")))
                .singleElement()
                .satisfies(f -> assertThat(f.severity()).isEqualTo(Severity.STOP));
    }

    @Test
    void theJobsOwnEarlierClaimIsNoCollision() {
        claimed("t-1", "T-100", SchemeName.STC);
        Job job = job("Tank serial", "T-100");
        assertThat(findings(job)).isEmpty();
        assertThat(ledger.history(job).claims())
                .extracting(ClaimState::reference)
                .containsExactly("t-1-STC");
    }

    @Test
    void whatAClaimOfACancelledJobHoldsIsNoCollision() {
        claimed("SB-1", "T-100", SchemeName.STC);
        Job job = job("Tank serial", "T-100");
        JobHistory history = ledger.history(job);
        assertThat(history.without(Set.of("SB-2")).conflicts()).hasSize(1);
        assertThat(history.without(Set.of("sb-1")).conflicts()).isEmpty();
    }

    @Test
    void theClaimsOfWhatAJobCorrectsBelongToItsHistoryByJobOrByClaim() {
        claimed("SB-1", "T-100", SchemeName.STC, SchemeName.VEEC);
        assertThat(claims("sb-1")).containsExactly("SB-1-STC", "SB-1-VEEC");
        assertThat(claims("the claim SB-1-VEEC")).containsExactly("SB-1-VEEC");
        assertThat(claims("SB-9")).isEmpty();
        Job job = job("Tank serial,Corrects", "T-100,SB-1");
        assertThat(ledger.history(job).standing("T-1")).isEmpty();
        assertThat(ledger.history(job).standing("sb-1")).hasSize(2);
    }

    private List<String> claims(String corrects) {
        Job job = job("Tank serial,Corrects", "T-100," + corrects);
        return ledger.history(job).claims().stream().map(ClaimState::reference).toList();
    }
}
