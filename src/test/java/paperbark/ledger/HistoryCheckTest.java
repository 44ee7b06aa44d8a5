package paperbark.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.entitlement.Schemes;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobBuilder;
import paperbark.job.Origin;
import paperbark.job.Register;
import paperbark.sheet.Column;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/** What is said of a job that was in a batch before. */
class HistoryCheckTest {
    private static final String HEADINGS =
            "Job,Installed on,TANK SERIAL,Old heater,Old serial,Old heater removed on,Owner,BSB,Account number,Claim STCs,Claim VEECs\n";
    private static final String AS_CLAIMED =
            HEADINGS
                    + "T-1,16/11/2026,2610040004512101,gas storage,OS-1,15/11/2026,Ada Amberwood,000-000,12345678,yes,yes\n";

    @TempDir private Path folder;

    private Path file;

    @BeforeEach
    void claimUnderBothSchemes() {
        file = folder.resolve("paperbark.db");
        Entries.create(file, Instant.EPOCH);
        enter(
                "one",
                AS_CLAIMED,
                JobOutcome.ISSUED,
                Set.of(),
                claim(SchemeName.STC),
                claim(SchemeName.VEEC));
    }

    private static ClaimEntry claim(SchemeName scheme) {
        return Entries.claim(scheme, "2610040004512101", "504.00");
    }

    private void enter(
            String batch,
            String register,
            JobOutcome outcome,
            Set<SchemeName> held,
            ClaimEntry... claims) {
        Job job = Register.job(register);
        try (Ledger ledger = Ledger.open(file)) {
            Entries.enter(
                    ledger,
                    Entries.batch(
                            batch,
                            new JobEntry(
                                    job.reference(),
                                    2,
                                    Optional.empty(),
                                    outcome,
                                    "packs/T-1.pdf",
                                    job.installedOn(),
                                    Optional.empty(),
                                    "",
                                    ledger.prints(job),
                                    Optional.empty(),
                                    List.of(claims),
                                    held,
                                    List.of())));
        }
    }

    private void lodgeBoth() {
        try (Ledger ledger = Ledger.open(file)) {
            ledger.settle(
                    Entries.advice("33"),
                    book -> {
                        int row = 2;
                        for (ClaimState claim : book.byJob("T-1")) {
                            AdviceLine line =
                                    new AdviceLine(
                                            "line" + row,
                                            row++,
                                            Entries.DAY,
                                            Money.ZERO,
                                            claim.reference());
                            book.match(
                                    book.enter(line),
                                    line,
                                    claim,
                                    AdviceStatus.LODGED,
                                    Money.ZERO,
                                    "reference",
                                    "",
                                    "");
                        }
                        return null;
                    });
        }
    }

    private JobHistory history(Job job) {
        try (Ledger ledger = Ledger.open(file)) {
            return ledger.history(job);
        }
    }

    /** The findings when a word of the row was changed. */
    private List<Finding> changed(String before, String after) {
        Job job = Register.job(AS_CLAIMED.replace(before, after));
        return HistoryCheck.of(job, history(job), Schemes.KNOWN.hangsOn());
    }

    /** What is said of the job when a word of the row was changed. */
    private String told(String before, String after) {
        Job job = Register.job(AS_CLAIMED.replace(before, after));
        return HistoryCheck.changed(
                        job,
                        history(job).earlier().orElseThrow(),
                        List.of("the paper"),
                        List.of(),
                        true)
                .orElseThrow()
                .fact();
    }

    private static List<Concern> held(List<Finding> findings) {
        List<Concern> held = new ArrayList<>();
        findings.stream()
                .filter(f -> f.code() == FindingCode.CLAIM_UNDER_WAY)
                .forEach(f -> held.addAll(f.holds()));
        return held;
    }

    @Test
    void aChangedSerialOfTheOldHeaterStopsNoClaim() {
        lodgeBoth();
        assertThat(changed("OS-1", "OS-2")).isEmpty();
        assertThat(told("OS-1", "OS-2")).endsWith("these facts changed: \"Old serial\".");
    }

    @Test
    void aChangedRemovalDayStopsTheClaimOfVeecsAlone() {
        lodgeBoth();
        List<Finding> findings = changed("15/11/2026", "14/11/2026");
        assertThat(held(findings)).containsExactly(Concern.claim(SchemeName.VEEC));
        assertThat(findings.get(0).fact())
                .isEqualTo(
                        "The claim T-1-VEEC is with the buyer, and it hangs on \"Old heater removed on\", which"
                                + " changed.");
    }

    @Test
    void aChangedSerialOfTheNewHeaterStopsBothAndIsCalledAsTheFirmCallsIt() {
        lodgeBoth();
        List<Finding> findings = changed("2610040004512101", "2610040004512102");
        assertThat(held(findings))
                .containsExactly(Concern.claim(SchemeName.STC), Concern.claim(SchemeName.VEEC));
        assertThat(findings.get(0).fact()).contains("\"TANK SERIAL\"");
        assertThat(told("2610040004512101", "2610040004512102")).contains("\"TANK SERIAL\"");
    }

    @Test
    void aRowThatNoLongerClaimsWhatTheBuyerHasIsNamedAndStopsNothing() {
        lodgeBoth();
        List<Finding> findings = changed(",yes,yes", ",no,yes");
        assertThat(findings).hasSize(1);
        assertThat(findings.get(0).severity()).isEqualTo(Severity.CHECK);
        assertThat(findings.get(0).fact() + " " + findings.get(0).remedy())
                .contains("no longer claims STCs", "T-1-STC falls away")
                .contains("; agree with Kestrel Certificates on T-1-STC, which they have.");
    }

    /** What is not claimed any more is not owed, but for what the buyer has while it is held. */
    @Test
    void aLaterVersionTakesAwayWhatItNoLongerClaims() {
        Set<SchemeName> both = Set.of(SchemeName.STC, SchemeName.VEEC);
        enter("two", AS_CLAIMED, JobOutcome.HELD, both);
        assertThat(standing()).isEmpty();
        enter("three", AS_CLAIMED, JobOutcome.ISSUED, Set.of(), claim(SchemeName.VEEC));
        assertThat(standing()).containsExactly("T-1-VEEC");
    }

    @Test
    void whatTheBuyerHasStandsAsLongAsItIsOnlyHeld() {
        lodgeBoth();
        enter("two", AS_CLAIMED, JobOutcome.HELD, Set.of(SchemeName.STC));
        assertThat(standing()).containsExactly("T-1-STC");
        enter("three", AS_CLAIMED, JobOutcome.BOOKED, Set.of());
        assertThat(standing()).isEmpty();
    }

    private List<String> standing() {
        try (Ledger ledger = Ledger.open(file)) {
            ledger.verify();
            return ledger.claims(Entries.DAY).stream().map(ClaimState::reference).toList();
        }
    }

    @Test
    void aClaimThatNobodyLodgedIsStoppedByNothing() {
        assertThat(held(changed("2610040004512101", "2610040004512102"))).isEmpty();
    }

    @Test
    void whatWasHeldOnceIsHeldAgainAsLongAsTheBuyerHasTheEarlierClaim() {
        lodgeBoth();
        String other = AS_CLAIMED.replace("15/11/2026", "14/11/2026");
        enter("two", other, JobOutcome.HELD, Set.of(SchemeName.VEEC), claim(SchemeName.STC));
        Job again = Register.job(other);
        JobHistory history = history(again);
        assertThat(history.earlier().orElseThrow().changed().orElseThrow()).isEmpty();
        assertThat(held(HistoryCheck.of(again, history, Schemes.KNOWN.hangsOn())))
                .containsExactly(Concern.claim(SchemeName.VEEC));
    }

    @Test
    void ofItsOwnClaimsTheBuyerHasWhatWasLodgedAndHasNotFailed() {
        Job job = Register.job(AS_CLAIMED);
        assertThat(history(job).withBuyer()).isEmpty();
        lodgeBoth();
        assertThat(history(job).withBuyer())
                .hasSize(2)
                .allSatisfy((scheme, claim) -> assertThat(claim.scheme()).isEqualTo(scheme));
        fail("T-1-VEEC");
        assertThat(history(job).withBuyer()).containsOnlyKeys(SchemeName.STC);
    }

    private void fail(String reference) {
        try (Ledger ledger = Ledger.open(file)) {
            ledger.settle(
                    Entries.advice("44"),
                    book -> {
                        AdviceLine line =
                                new AdviceLine("failed", 2, Entries.DAY, Money.ZERO, reference);
                        ClaimState claim = book.byReference(reference).get(0);
                        return book.match(
                                book.enter(line),
                                line,
                                claim,
                                AdviceStatus.FAILED,
                                Money.ZERO,
                                "reference",
                                "no photo",
                                "");
                    });
        }
    }

    @Test
    void bankDetailsAreComparedByNothing() {
        assertThat(changed("12345678", "87654321")).isEmpty();
        assertThat(HistoryCheck.isDone(history(Register.job(AS_CLAIMED)))).isTrue();
    }

    @Test
    void withoutItsKeyAJobIsNotDoneAndItsClaimsUnderWayAreHeld() throws IOException {
        lodgeBoth();
        Files.move(folder.resolve("paperbark.key"), folder.resolve("elsewhere"));
        Job job = Register.job(AS_CLAIMED);
        JobHistory history = history(job);
        assertThat(HistoryCheck.isUntold(history)).isTrue();
        assertThat(HistoryCheck.isDone(history)).isFalse();
        List<Finding> findings = HistoryCheck.of(job, history, Schemes.KNOWN.hangsOn());
        assertThat(held(findings))
                .containsExactly(Concern.claim(SchemeName.STC), Concern.claim(SchemeName.VEEC));
        assertThat(findings).hasSize(2);
        assertThat(folder.resolve("paperbark.key")).doesNotExist();

        Files.move(folder.resolve("elsewhere"), folder.resolve("paperbark.key"));
        assertThat(HistoryCheck.isDone(history(job))).isTrue();
    }

    @Test
    void anotherKeyIsNotTakenForAChangeOfEveryFact() throws IOException {
        Files.writeString(folder.resolve("paperbark.key"), "ab".repeat(32) + "\n");
        assertThat(HistoryCheck.isUntold(history(Register.job(AS_CLAIMED)))).isTrue();
    }

    @Test
    void theSameFactOfTwoJobsHasTwoPrintsAndNoneWithoutTheKey() {
        try (Ledger ledger = Ledger.open(file)) {
            Prints one = ledger.prints(Register.job(AS_CLAIMED));
            Prints other = ledger.prints(Register.job(AS_CLAIMED.replace("T-1", "T-2")));
            assertThat(one.byFact().get("owner-name"))
                    .isNotEqualTo(other.byFact().get("owner-name"));
            assertThat(one.byFact()).doesNotContainKeys("bsb", "account", "account-name");
            assertThat(one.text()).doesNotContain("Ada");
        }
    }

    private Finding changedFinding(List<String> takeBack, boolean anyStands) {
        return changedFinding(takeBack, List.of(), anyStands);
    }

    private Finding changedFinding(List<String> takeBack, List<String> agreed, boolean anyStands) {
        Job job = Register.job(AS_CLAIMED.replace("OS-1", "OS-2"));
        Earlier earlier = history(job).earlier().orElseThrow();
        return HistoryCheck.changed(job, earlier, takeBack, agreed, anyStands).orElseThrow();
    }

    @Test
    void whatIsToBeTakenBackIsNamedAndWhatStandsIsSaid() {
        Finding all = changedFinding(List.of("the pack"), false);
        assertThat(all.remedy())
                .isEqualTo("Take back the pack packs/T-1.pdf of that batch; this is version 2.");
        assertThat(all.severity()).isEqualTo(Severity.CHECK);
        assertThat(all.job()).contains("T-1");

        Finding some = changedFinding(List.of("the paper", "another"), true);
        assertThat(some.remedy())
                .startsWith("Take back only: the paper, another; the other papers stand.");
        assertThat(some.severity()).isEqualTo(Severity.CHECK);

        assertThat(changedFinding(List.of("the paper"), List.of("an assignment"), false).remedy())
                .isEqualTo(
                        "Take back only: the paper; the buyer has: an assignment, to be agreed on with them.");

        Finding none = changedFinding(List.of(), false);
        assertThat(none.remedy())
                .isEqualTo(
                        "Put the new papers with the earlier ones; nothing is to be taken back.");
        assertThat(none.severity()).isEqualTo(Severity.NOTE);
        assertThat(changedFinding(List.of(), true).remedy())
                .contains("nothing is to be taken back; the other papers stand.");
    }

    @Test
    void aJobThatIsTheSameIsNotToldToHaveChanged() {
        Job job = Register.job(AS_CLAIMED);
        Earlier earlier = history(job).earlier().orElseThrow();
        assertThat(HistoryCheck.changed(job, earlier, List.of("the paper"), List.of(), true))
                .isEmpty();
        assertThat(HistoryCheck.isUntold(history(job))).isFalse();
        assertThat(HistoryCheck.forgotten(job, earlier).fact())
                .startsWith("Job T-1 was in batch one, and what it told of its owner");
    }

    @Test
    void whatWasHeldOrBookedOutIsNeverDone() {
        Job job = Register.job(AS_CLAIMED);
        enter("two", AS_CLAIMED, JobOutcome.HELD, Set.of());
        assertThat(HistoryCheck.isDone(history(job))).isFalse();
        enter("three", AS_CLAIMED, JobOutcome.ISSUED, Set.of());
        assertThat(HistoryCheck.isDone(history(job))).isTrue();
        try (Ledger ledger = Ledger.open(file)) {
            ledger.withdraw(
                    new WithdrawalEntry(
                            List.of(new WithdrawalEntry.Line("T-1", "called off")),
                            "",
                            "",
                            Entries.DAY,
                            Instant.EPOCH,
                            "test"));
        }
        assertThat(HistoryCheck.isDone(history(job))).isFalse();
        assertThat(HistoryCheck.isDone(JobHistory.NONE)).isFalse();
        assertThat(HistoryCheck.isUntold(JobHistory.NONE)).isFalse();
    }

    @Test
    void aPaidClaimIsToldWithWhatWasPaid() {
        try (Ledger ledger = Ledger.open(file)) {
            ledger.settle(
                    Entries.advice("33"),
                    book -> {
                        Money money = Money.of("504.00");
                        AdviceLine line = new AdviceLine("k", 2, Entries.DAY, money, "T-1-STC");
                        return book.match(
                                book.enter(line),
                                line,
                                book.byReference("T-1-STC").get(0),
                                AdviceStatus.PAID,
                                money,
                                "reference",
                                "",
                                "");
                    });
        }
        List<Finding> findings = changed("2610040004512101", "2610040004512102");
        assertThat(findings)
                .filteredOn(f -> f.code() == FindingCode.CLAIM_UNDER_WAY)
                .singleElement()
                .satisfies(
                        f -> assertThat(f.fact()).startsWith("The claim T-1-STC was paid $504.00"));
    }

    /** Such as street and suburb, where a register has the address in one cell. */
    @Test
    void aColumnThatTellsSeveralFactsIsNamedOnce() {
        Job job =
                Register.job(
                        AS_CLAIMED
                                .replace("OS-1", "OS-2")
                                .replace("Ada Amberwood", "Abe Boxthorn"));
        Origin origin = job.origin();
        Map<Field, Column> columns = new HashMap<>(origin.columns());
        columns.put(Field.OLD_SERIAL, columns.get(Field.OWNER_NAME));
        Origin shared =
                new Origin(
                        origin.file(),
                        origin.sheet(),
                        origin.row(),
                        columns,
                        origin.from1904(),
                        origin.supposed());
        assertThat(
                        HistoryCheck.changed(
                                        JobBuilder.builder(job).origin(shared).build(),
                                        history(job).earlier().orElseThrow(),
                                        List.of(),
                                        List.of(),
                                        true)
                                .orElseThrow()
                                .fact())
                .endsWith("since then these facts changed: \"Owner\".");
    }
}
