package paperbark.ledger;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.ledger.Batches.BatchState;
import paperbark.value.SchemeName;

/** How batches stand: of which register, how many jobs, what is held, how far on the disk. */
class BatchesTest {
    @TempDir private Path folder;

    private Ledger ledger;

    @BeforeEach
    void open() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
        Entries.enter(ledger, Entries.batch("one", Entries.job("SB-1"), Entries.held("SB-2")));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private BatchState only() {
        List<BatchState> all = ledger.batches().of("11");
        assertThat(all).hasSize(1);
        return all.get(0);
    }

    @Test
    void aBatchTellsItsRegisterItsJobsAndHowManyAreHeld() {
        assertThat(only()).isEqualTo(new BatchState("one", "week.xlsx", Entries.DAY, false, 2, 1));
        assertThat(ledger.batches().of("12")).isEmpty();
    }

    @Test
    void aJobIsHeldUntilALaterBatchHasItOrItIsBookedOut() {
        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("SB-2", "called off")),
                        "",
                        "",
                        Entries.DAY,
                        Instant.EPOCH,
                        "test"));
        assertThat(only().held()).isZero();
        assertThat(ledger.batches().hasWithdrawn("one")).isTrue();
    }

    @Test
    void theNewestAreToldFirstAndOnlyThoseOfThePlace() {
        Entries.enter(ledger, Entries.batch("two", Entries.job("SB-2")));
        assertThat(ledger.batches().newest(5, "here"))
                .extracting(BatchState::name, BatchState::held)
                .containsExactly(tuple("two", 0), tuple("one", 0));
        assertThat(ledger.batches().newest(1, "here"))
                .extracting(BatchState::name)
                .containsExactly("two");
        assertThat(ledger.batches().newest(5, "elsewhere")).isEmpty();
        assertThat(ledger.batches().hasWithdrawn("one")).isFalse();
    }

    @Test
    void aBatchGoesFromTakenInOverPublishedToFiled() {
        assertThat(ledger.batches().publishedIn("here")).isEmpty();
        assertThat(progress().isPublished()).isFalse();
        ledger.batches().notePublished("one");
        assertThat(ledger.batches().publishedIn("here")).containsExactly("one");
        assertThat(ledger.batches().publishedIn("elsewhere")).isEmpty();
        assertThat(only().filed()).isFalse();
        assertThat(ledger.batches().progress())
                .containsExactly(new BatchProgress("one", "here", "published"));
        assertThat(progress().isPublished()).isTrue();
        assertThat(progress().isFiled()).isFalse();

        ledger.batches().noteFiled("one");
        assertThat(progress().isPublished()).isTrue();
        assertThat(progress().isFiled()).isTrue();
        assertThat(only().filed()).isTrue();
        assertThat(ledger.batches().publishedIn("here")).containsExactly("one");
        assertThat(ledger.batches().unfiled("here")).isEmpty();
    }

    private BatchProgress progress() {
        return ledger.batches().progress().get(0);
    }

    @Test
    void aBatchThatTellsNoFolderMayBeOfAny() {
        assertThat(progress().isOf("here")).isTrue();
        assertThat(progress().isOf("elsewhere")).isFalse();
        assertThat(new BatchProgress("one", "", "filed").isOf("elsewhere")).isTrue();
    }

    @Test
    void aBatchGetsItsManifestLastAndStaysTheSameOtherwise() {
        BatchEntry two = Entries.batch("two", Entries.job("SB-9"));
        assertThat(two.withManifest("77").withManifest("22")).isEqualTo(two);
        Entries.enter(ledger, two.withManifest("77"));
        assertThat(ledger.batches().hasManifest("77")).isTrue();
    }

    @Test
    void aBatchIsAfterADayOnlyWhereItsOwnIsLater() {
        assertThat(ledger.batches().after(Entries.DAY.minusDays(1))).hasSize(1);
        assertThat(ledger.batches().after(Entries.DAY)).isEmpty();
    }

    @Test
    void aBatchIsKnownByNameAndByManifest() {
        assertThat(ledger.batches().isKnown("one")).isTrue();
        assertThat(ledger.batches().isKnown("two")).isFalse();
        assertThat(ledger.batches().hasManifest("22")).isTrue();
        assertThat(ledger.batches().hasManifest("23")).isFalse();
    }

    @Test
    void whereOneOfficeHasTheLedgerABatchIsToldByItsNameAlone() {
        Entries.enter(ledger, Entries.batch("two", Entries.job("SB-3")));
        assertThat(ledger.versions("SB-1"))
                .singleElement()
                .satisfies(v -> assertThat(v.batchInWords()).isEqualTo("one"));
    }

    @Test
    void aJobIsCurrentInItsNewestVersion() {
        Entries.enter(
                ledger,
                Entries.batch(
                        "two",
                        Entries.job("SB-2", Entries.claim(SchemeName.STC, "T-100", "504.00"))));
        assertThat(ledger.currentJobs())
                .extracting(CurrentJob::reference, CurrentJob::outcome, CurrentJob::batch)
                .containsExactly(
                        tuple("SB-1", JobOutcome.ISSUED, "one"),
                        tuple("SB-2", JobOutcome.ISSUED, "two"));
        assertThat(ledger.currentJobs()).noneMatch(CurrentJob::withdrawn);
        assertThat(ledger.versions("sb-2"))
                .extracting(JobVersion::number, JobVersion::batch, JobVersion::installedOn)
                .containsExactly(
                        tuple(1, "one", Optional.of(Entries.DAY)),
                        tuple(2, "two", Optional.of(Entries.DAY)));
    }

    @Test
    void ofTwoVersionsOfAClaimTheLaterLastDayCounts() {
        ClaimEntry claim = Entries.claim(SchemeName.STC, "T-100", "504.00");
        Entries.enter(ledger, Entries.batch("two", Entries.job("SB-3", claim)));
        Entries.enter(
                ledger, Entries.batch("three", Entries.job("SB-3", by(claim, 400, "504.01"))));
        Entries.enter(ledger, Entries.batch("four", Entries.job("SB-3", by(claim, 10, "504.02"))));
        assertThat(ledger.lastDays("sb-3"))
                .containsExactly(Map.entry(SchemeName.STC, Entries.DAY.plusDays(400)));
    }

    private static ClaimEntry by(ClaimEntry claim, int days, String expected) {
        return new ClaimEntry(
                claim.scheme(),
                claim.buyer(),
                claim.certificates(),
                claim.installedOn(),
                Optional.of(Entries.DAY.plusDays(days)),
                claim.serials(),
                Entries.claim(claim.scheme(), "T-100", expected).promise());
    }

    @Test
    void whatIsForgottenIsToldOnceAndTheVersionSaysSo() {
        ledger.forget("sb-1", Entries.DAY, Instant.EPOCH, "test");
        assertThat(ledger.forgottenSince(0)).containsExactly(new Forgotten(2, "SB-1"));
        assertThat(ledger.forgottenSince(2)).isEmpty();
        assertThat(ledger.versions("SB-1")).allMatch(JobVersion::forgotten);
        assertThat(ledger.versions("SB-2")).noneMatch(JobVersion::forgotten);
        ledger.verify();
    }

    @Test
    void whatIsForgottenCanBeReadNowhereInTheFile() throws Exception {
        Path file = folder.resolve("paperbark.db");
        assertThat(text(file)).contains("SITE OF SB-1");
        ledger.forget("SB-1", Entries.DAY, Instant.EPOCH, "test");
        assertThat(text(file)).doesNotContain("SITE OF SB-1").contains("SITE OF SB-2");
    }

    private static String text(Path file) throws IOException {
        return new String(Files.readAllBytes(file), ISO_8859_1);
    }

    @Test
    void aListOfAnotherNameIsAnOlderOneOnlyWhereFourOfFiveJobsAreThereStill() {
        JobEntry[] jobs = new JobEntry[5];
        for (int i = 0; i < jobs.length; i++) {
            ClaimEntry claim = Entries.claim(SchemeName.STC, "G-10" + i, "504.00");
            jobs[i] = Entries.job("G-" + i, claim);
        }
        Entries.enter(ledger, Entries.batch("list", jobs));
        assertThat(gone("other.xlsx", "G-0", "G-1", "G-2", "G-3"))
                .containsExactly(new GoneJobs("list", List.of("G-4")));
        assertThat(gone("other.xlsx", "G-0", "G-1", "G-2")).isEmpty();
        assertThat(gone("week.xlsx", "G-0", "G-1")).isEmpty();
        assertThat(gone("week.xlsx", "G-0", "G-1", "G-2")).hasSize(1);
        assertThat(gone("other.xlsx", "G-0", "G-1", "G-2", "G-3", "G-4")).isEmpty();
    }

    @Test
    void fewerThanThreeJobsMakeNoListOfAnotherName() {
        ClaimEntry[] claims = {
            Entries.claim(SchemeName.STC, "H-100", "504.00"),
            Entries.claim(SchemeName.STC, "H-101", "504.00"),
        };
        Entries.enter(
                ledger,
                Entries.batch(
                        "pair", Entries.job("H-0", claims[0]), Entries.job("H-1", claims[1])));
        assertThat(gone("other.xlsx", "H-0")).isEmpty();
        assertThat(gone("week.xlsx", "H-0")).containsExactly(new GoneJobs("pair", List.of("H-1")));
    }

    private List<GoneJobs> gone(String register, String... jobs) {
        return ledger.gone(register, List.of(jobs));
    }
}
