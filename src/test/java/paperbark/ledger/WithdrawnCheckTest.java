package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What is said of jobs that are called off, by how far they had come. */
class WithdrawnCheckTest {
    private static final Job JOB = Register.job("Job,Stage\nT-1,cancelled\n");

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

    private void batch(ClaimEntry... claims) {
        Entries.enter(ledger, Entries.batch("one", Entries.job("T-1", claims)));
    }

    private static ClaimEntry claim() {
        return Entries.claim(SchemeName.STC, "T-100", "504.00");
    }

    private void told(AdviceStatus status, String amount) {
        ledger.settle(
                Entries.advice("33"),
                book -> {
                    Money money = Money.of(amount);
                    AdviceLine line = new AdviceLine("k", 2, Entries.DAY, money, "T-1-STC");
                    ClaimState claim = book.byReference("T-1-STC").get(0);
                    return book.match(
                            book.enter(line), line, claim, status, money, "reference", "", "");
                });
    }

    private Finding cancelled(boolean sold) {
        return WithdrawnCheck.cancelled(JOB, ledger.history(JOB), sold);
    }

    @Test
    void whatWasInNoBatchIsANoteAndNothingIsToBeDone() {
        assertThat(cancelled(false).severity()).isEqualTo(Severity.NOTE);
        assertThat(cancelled(false).remedy()).isEmpty();
        assertThat(cancelled(false).fact()).endsWith("is prepared or claimed for it.");
    }

    @Test
    void papersOfAJobWithoutClaimsAreTakenBack() {
        batch();
        Finding finding = cancelled(false);
        assertThat(finding.severity()).isEqualTo(Severity.CHECK);
        assertThat(finding.fact()).endsWith(", but its papers went out with batch one.");
        assertThat(finding.remedy())
                .isEqualTo("Take back its papers, the newest in packs/T-1.pdf of batch one.");
    }

    @Test
    void whatWasClaimedIsNamedAndTheBuyerOnlyOnceTheyHaveIt() {
        batch(claim());
        assertThat(cancelled(false).fact())
                .endsWith(", and what was claimed for it is withdrawn: T-1-STC.");
        assertThat(cancelled(false).remedy()).doesNotContain("agree");
        told(AdviceStatus.LODGED, "0.00");
        assertThat(cancelled(false).remedy())
                .endsWith("; agree with Kestrel Certificates on T-1-STC, which they have.");
    }

    @Test
    void whatWasPaidIsNamedWithTheSum() {
        batch(claim());
        told(AdviceStatus.PAID, "504.00");
        assertThat(cancelled(false).remedy())
                .endsWith(
                        "; agree with Kestrel Certificates on T-1-STC, for which they paid $504.00.");
    }

    @Test
    void aSaleIsToBeTakenBackInTheBooks() {
        batch();
        assertThat(cancelled(true).remedy())
                .endsWith(
                        ". Where the journal of batch one books its sale, the journal of the withdrawal,"
                                + " in advices, takes that back: book it too.");
    }

    @Test
    void whatIsWithdrawnAlreadyIsANoteWithItsDay() {
        batch(claim());
        withdraw();
        Finding finding = cancelled(true);
        assertThat(finding.severity()).isEqualTo(Severity.NOTE);
        assertThat(finding.fact()).endsWith(", and it was withdrawn on 24 Nov 2026.");
        assertThat(finding.remedy()).isEmpty();
    }

    private void withdraw() {
        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("T-1", "called off")),
                        "",
                        "",
                        Entries.DAY.plusDays(1),
                        Instant.EPOCH,
                        "test"));
    }

    @Test
    void whatComesAgainIsToldWithItsDayAndReason() {
        batch(claim());
        withdraw();
        Earlier earlier = ledger.history(JOB).earlier().orElseThrow();
        assertThat(WithdrawnCheck.takenBack(JOB, earlier).fact())
                .startsWith("Job T-1 was withdrawn on 24 Nov 2026: called off.");
        assertThat(WithdrawnCheck.takenBack(JOB, earlier).job()).contains("T-1");
        assertThat(earlier.withdrawn().orElseThrow().isByList()).isFalse();
        assertThat(new Withdrawn(Entries.DAY, "not in the list", "week.csv").isByList()).isTrue();
        assertThat(WithdrawnCheck.leftOut(JOB, earlier).fact())
                .startsWith("Job T-1 was withdrawn on 24 Nov 2026: called off.");
    }

    @Test
    void jobsThatLeftTheirListAreOneSentenceWithACommandThatCanBeTyped() {
        Finding one = WithdrawnCheck.gone("week.csv", new GoneJobs("one", List.of("SB-1")));
        assertThat(one.fact())
                .isEqualTo(
                        "Job SB-1 stands in the ledger since batch one but no longer in this list.");
        assertThat(one.remedy()).contains("its row, or book it out: withdraw SB-1 --because");
        Finding two = WithdrawnCheck.gone("week.csv", new GoneJobs("one", List.of("A 1", "B")));
        assertThat(two.fact()).startsWith("These jobs stand").endsWith(": A 1, B.");
        assertThat(two.remedy()).contains("their rows, or book each out: withdraw \"A 1\" ");
    }
}
