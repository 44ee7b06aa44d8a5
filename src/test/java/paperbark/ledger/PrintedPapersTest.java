package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.job.Register;

/** What the ledger has of the papers of a job that went out before. */
class PrintedPapersTest {
    private static final String UNKNOWN = "Job,Tank serial\nT-1,T-100\n";
    private static final Set<JobFact> OLD_SERIAL = JobFact.of(Field.OLD_SERIAL);

    @TempDir private Path folder;

    private Ledger ledger;

    @BeforeEach
    void aPaperWentOutBeforeTheOldSerialWasKnown() {
        Path file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        ledger = Ledger.open(file);
        enter("one", UNKNOWN);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private static String knowing(String oldSerial) {
        return "Job,Tank serial,Old heater,Old serial\nT-1,T-100,gas storage," + oldSerial + "\n";
    }

    private void enter(String batch, String register) {
        Job job = Register.job(register);
        Entries.enter(
                ledger,
                Entries.batch(
                        batch,
                        new JobEntry(
                                job.reference(),
                                2,
                                Optional.empty(),
                                JobOutcome.ISSUED,
                                "packs/" + batch + ".pdf",
                                job.installedOn(),
                                Optional.empty(),
                                "",
                                ledger.prints(job),
                                Optional.empty(),
                                List.of(),
                                Set.of(),
                                List.of(
                                        new PaperEntry("warranty", "form: default\n"),
                                        new PaperEntry("handover", "form: own\n")))));
    }

    private List<PrintedPaper> papers(String register) {
        return ledger.history(Register.job(register)).papers();
    }

    @Test
    void eachPaperIsToldWithItsBatchPackAndWhatItSaid() {
        enter("two", knowing("OS-1"));
        assertThat(papers(UNKNOWN))
                .extracting(p -> p.batch() + " " + p.kind() + " " + p.pack() + " " + p.says())
                .containsExactly(
                        "two handover packs/two.pdf form: own\n",
                        "two warranty packs/two.pdf form: default\n",
                        "one handover packs/one.pdf form: own\n",
                        "one warranty packs/one.pdf form: default\n");
        assertThat(papers(UNKNOWN)).allMatch(p -> p.day().equals(Entries.DAY));
    }

    @Test
    void aFactThatWasNotKnownIsAChangeThatThePaperHasABoxFor() {
        PrintedPaper paper = papers(knowing("OS-1")).get(0);
        assertThat(paper.changed().orElseThrow()).containsAll(OLD_SERIAL);
        assertThat(paper.blank()).containsAll(OLD_SERIAL);
        assertThat(paper.blank()).doesNotContainAnyElementsOf(JobFact.of(Field.TANK_SERIAL));
        assertThat(paper.blank()).doesNotContainAnyElementsOf(JobFact.of(Field.POSTAL_STREET));
        assertThat(papers(UNKNOWN).get(0).changed()).contains(Set.of());
    }

    @Test
    void whatALaterListSaidOtherwiseWasWrittenInByHand() {
        enter("two", knowing("OS-1"));
        PrintedPaper same = papers(knowing("OS-1")).get(3);
        assertThat(same.batch()).isEqualTo("one");
        assertThat(same.blank()).containsAll(OLD_SERIAL);

        PrintedPaper other = papers(knowing("OS-2")).get(3);
        assertThat(other.blank()).doesNotContainAnyElementsOf(OLD_SERIAL);
        assertThat(other.changed().orElseThrow()).containsAll(OLD_SERIAL);
    }

    @Test
    void whatNoListSaidYetLeavesItsBoxWhateverChangedSince() {
        enter("two", UNKNOWN.replace("T-100", "T-101"));
        PrintedPaper first = papers(knowing("OS-1")).get(3);
        assertThat(first.batch()).isEqualTo("one");
        assertThat(first.blank()).containsAll(OLD_SERIAL);
    }

    @Test
    void howFarAPaperHasComeIsToldOnceAnythingWasScanned() {
        assertThat(papers(UNKNOWN)).allMatch(p -> p.step().isEmpty());
        new ScanBook(ledger)
                .enter(
                        Entries.scan(
                                "1",
                                Entries.page(1, "T-1", 1, 1, 0),
                                Entries.page(2, "T-1", 1, 2, 0)));
        assertThat(papers(UNKNOWN))
                .extracting(p -> p.kind() + " " + p.step().orElseThrow())
                .containsExactly("handover PRINTED", "warranty BACK");
        enter("two", knowing("OS-1"));
        assertThat(papers(UNKNOWN))
                .extracting(p -> p.batch() + " " + p.kind() + " " + p.step().orElseThrow())
                .containsExactly(
                        "two handover PRINTED",
                        "two warranty PRINTED",
                        "one handover PRINTED",
                        "one warranty BACK");
    }

    @Test
    void whatIsWithdrawnIsNobodysPaper() {
        ledger.withdraw(
                new WithdrawalEntry(
                        List.of(new WithdrawalEntry.Line("T-1", "called off")),
                        "week.csv",
                        "11",
                        Entries.DAY,
                        Instant.EPOCH,
                        "test"));
        assertThat(papers(UNKNOWN)).isEmpty();
        assertThat(ledger.history(Register.job(UNKNOWN)).earlier().orElseThrow().withdrawn())
                .contains(new Withdrawn(Entries.DAY, "called off", "week.csv"));
        enter("two", UNKNOWN);
        assertThat(papers(UNKNOWN)).extracting(PrintedPaper::batch).containsOnly("two");
        assertThat(ledger.history(Register.job(UNKNOWN)).earlier().orElseThrow().withdrawn())
                .isEmpty();
    }

    @Test
    void aLedgerHasItsKeyWhereNothingIsPrintedOrTheKeyIsTheOneOfThePrints() throws Exception {
        assertThat(ledger.hasItsKey()).isTrue();
        Path key = folder.resolve("paperbark.key");
        String its = Files.readString(key);
        Files.writeString(key, "ab".repeat(32) + "\n");
        assertThat(ledger.hasItsKey()).isFalse();
        Files.delete(key);
        assertThat(ledger.hasItsKey()).isFalse();
        Files.writeString(key, its);
        assertThat(ledger.hasItsKey()).isTrue();

        Path empty = folder.resolve("empty.db");
        Entries.create(empty, Instant.EPOCH);
        Files.delete(folder.resolve("empty.key"));
        try (Ledger other = Ledger.open(empty)) {
            assertThat(other.hasItsKey()).isTrue();
        }
    }

    private static String planned(String stage, String crew) {
        return "Job,Stage,Crew,Tank serial\nT-1," + stage + "," + crew + ",T-100\n";
    }

    /** What is printed of a plan is nothing once it is over. */
    @Test
    void aPlanIsComparedWithAPlanAlone() {
        enter("two", planned("installed", "Red"));
        Set<JobFact> stage = JobFact.of(Field.STAGE);
        assertThat(changed(planned("booked", "Red"))).isEqualTo(stage);

        enter("three", planned("booked", "Red"));
        assertThat(changed(planned("booked", "Blue"))).isEqualTo(JobFact.of(Field.CREW));
        assertThat(changed(planned("installed", "Red"))).isEqualTo(stage);
        assertThat(changed(planned("booked", "Red"))).isEmpty();
    }

    private Set<JobFact> changed(String register) {
        return ledger.history(Register.job(register))
                .earlier()
                .orElseThrow()
                .changed()
                .orElseThrow();
    }
}
