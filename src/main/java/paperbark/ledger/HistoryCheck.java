package paperbark.ledger;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.job.Stage;
import paperbark.value.Days;
import paperbark.value.SchemeName;
import paperbark.value.Serial;

/** What the ledger makes noticeable about a job. */
public final class HistoryCheck {
    private HistoryCheck() {}

    /**
     * Whether the job is done and says what it said then. One that was held is never done, and one
     * of which that cannot be told is not.
     *
     * @param history what the ledger knows of it
     */
    public static boolean isDone(JobHistory history) {
        return history.earlier()
                .filter(e -> e.outcome() != JobOutcome.HELD && e.withdrawn().isEmpty())
                .flatMap(Earlier::changed)
                .filter(Set::isEmpty)
                .isPresent();
    }

    /** Whether the job was in a batch and it cannot be told what changed in it since. */
    public static boolean isUntold(JobHistory history) {
        return history.earlier().filter(e -> e.changed().isEmpty()).isPresent();
    }

    /**
     * The findings about a job that is to be prepared.
     *
     * @param hangsOn the facts that a claim hangs on, by scheme
     */
    public static List<Finding> of(
            Job job, JobHistory history, Map<SchemeName, Set<JobFact>> hangsOn) {
        List<Finding> findings = new ArrayList<>();
        history.underWay().forEach(u -> findings.addAll(underWay(job, u, hangsOn)));
        if (job.hasClaims()) {
            // A heater is often claimed under two schemes; that is one finding.
            history.conflicts().stream()
                    .collect(
                            Collectors.groupingBy(
                                    c -> List.of(c.kind(), c.mine(), c.theirs(), c.job()),
                                    LinkedHashMap::new,
                                    Collectors.toList()))
                    .values()
                    .forEach(same -> findings.add(conflict(job, same)));
        }
        return findings.stream().map(f -> f.forJob(job.reference())).toList();
    }

    /** What is to be said of a job that comes again although it was forgotten. */
    public static Finding forgotten(Job job, Earlier earlier) {
        return Finding.of(
                FindingCode.JOB_FORGOTTEN,
                job.origin().cell(Field.JOB),
                "Job "
                        + job.reference()
                        + " was in batch "
                        + earlier.batchInWords()
                        + ", and what it told of its owner was forgotten since.",
                "Take the row out of the register, and where it is filed already run forget once more; new"
                        + " work needs a new job number.");
    }

    /**
     * What is to be said of a job that comes again with other facts.
     *
     * @param takeBack the earlier papers that count no longer; none where the job only moved on
     * @param agreed those that the buyer has, which are agreed on with them instead
     * @param anyStands whether an earlier paper counts still
     */
    public static Optional<Finding> changed(
            Job job,
            Earlier earlier,
            List<String> takeBack,
            List<String> agreed,
            boolean anyStands) {
        return earlier.changed()
                .filter(changed -> !changed.isEmpty())
                .map(
                        changed ->
                                Finding.of(
                                                FindingCode.JOB_CHANGED,
                                                job.origin().cell(Field.JOB),
                                                "The job was in batch "
                                                        + earlier.batchInWords()
                                                        + "; since then these facts changed: "
                                                        + headings(job, changed)
                                                        + ".",
                                                remedy(earlier, takeBack, agreed, anyStands))
                                        .as(takeBack.isEmpty() ? Severity.NOTE : Severity.CHECK)
                                        .forJob(job.reference()));
    }

    private static String remedy(
            Earlier earlier, List<String> takeBack, List<String> agreed, boolean anyStands) {
        if (!anyStands && agreed.isEmpty() && !takeBack.isEmpty()) {
            return "Take back the pack "
                    + earlier.pack()
                    + " of that batch; this is version "
                    + (earlier.version() + 1)
                    + ".";
        }
        String buyers =
                agreed.isEmpty()
                        ? ""
                        : "; the buyer has: "
                                + String.join(", ", agreed)
                                + ", to be agreed on with them";
        String others =
                anyStands
                        ? "; the other papers stand. Prepare with --again where an ABN, contact data or an"
                                + " account was corrected too, which is not compared."
                        : ".";
        return (takeBack.isEmpty()
                        ? "Put the new papers with the earlier ones; nothing is to be taken back"
                        : "Take back only: " + String.join(", ", takeBack))
                + buyers
                + others;
    }

    private static String headings(Job job, Set<JobFact> facts) {
        return facts.stream()
                .map(fact -> "\"" + fact.heading(job) + "\"")
                // An address may stand in one column.
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private static List<Finding> underWay(
            Job job, UnderWay underWay, Map<SchemeName, Set<JobFact>> hangsOn) {
        ClaimState claim = underWay.claim();
        if (job.stage() != Stage.INSTALLED || !job.claim(claim.scheme()).claimed()) {
            return List.of(dropped(job, claim));
        }
        String state =
                "The claim "
                        + claim.reference()
                        + (claim.received().isZero()
                                ? " is with the buyer"
                                : " was paid " + claim.received());
        if (underWay.changed().isEmpty()) {
            return List.of(
                    underWay(
                            job,
                            claim,
                            state + ", and it cannot be told whether its facts changed.",
                            "Take the row out of the register if nothing changed; otherwise agree on"
                                    + " the change with "
                                    + claim.buyer()
                                    + "."));
        }
        Set<JobFact> changed = new LinkedHashSet<>(underWay.changed().get());
        changed.retainAll(hangsOn.getOrDefault(claim.scheme(), Set.of()));
        return changed.isEmpty()
                ? List.of()
                : List.of(
                        underWay(
                                job,
                                claim,
                                state
                                        + ", and it hangs on "
                                        + headings(job, changed)
                                        + ", which changed.",
                                "Agree on the change with "
                                        + claim.buyer()
                                        + " and let them correct the claim."));
    }

    /** The register's word counts, as it does where a job is cancelled. */
    private static Finding dropped(Job job, ClaimState claim) {
        return Finding.of(
                        FindingCode.CLAIM_UNDER_WAY,
                        job.origin().cell(Field.JOB),
                        "The row no longer claims "
                                + claim.scheme().word()
                                + "s for an installed heater, so the claim "
                                + claim.reference()
                                + " falls away.",
                        "Look at its stage and claims again"
                                + WithdrawnCheck.buyers(List.of(claim))
                                + ".")
                .as(Severity.CHECK);
    }

    private static Finding underWay(Job job, ClaimState claim, String fact, String remedy) {
        return Finding.of(FindingCode.CLAIM_UNDER_WAY, job.origin().cell(Field.JOB), fact, remedy)
                .holding(Set.of(Concern.claim(claim.scheme())));
    }

    private static Finding conflict(Job job, List<Conflict> same) {
        Conflict conflict = same.get(0);
        String schemes =
                same.stream()
                        .map(c -> c.scheme().word())
                        .distinct()
                        .collect(Collectors.joining(" and "));
        String where =
                "job "
                        + conflict.job()
                        + " on "
                        + Days.show(conflict.day())
                        + " (batch "
                        + conflict.batch()
                        + ", "
                        + schemes
                        + ")";
        Finding finding = said(job, conflict, where);
        return finding.stops() && isReplaced(job, conflict) ? finding.as(Severity.CHECK) : finding;
    }

    private static boolean isReplaced(Job job, Conflict conflict) {
        return Keys.names(job.corrects(), conflict.job());
    }

    private static String remedy(Job job, Conflict conflict, String otherwise) {
        return isReplaced(job, conflict)
                ? "This row takes the place of "
                        + conflict.job()
                        + ", as it says itself: take back the papers of that job."
                : otherwise;
    }

    private static Finding said(Job job, Conflict conflict, String where) {
        return switch (conflict.kind()) {
            case SERIAL ->
                    Finding.of(
                                    FindingCode.SERIAL_CLAIMED_BEFORE,
                                    job.origin().cell(field(job, conflict.mine())),
                                    "The serial was already claimed for " + where + ".",
                                    remedy(
                                            job,
                                            conflict,
                                            "Read the number off the part again, or name the job under \""
                                                    + Field.CORRECTS.label()
                                                    + "\" if this row takes its place."))
                            .seeing(conflict.mine());
            case LOOKALIKE ->
                    Finding.of(
                                    FindingCode.SERIAL_LIKE_CLAIMED,
                                    job.origin().cell(field(job, conflict.mine())),
                                    "The serial is easily read for "
                                            + conflict.theirs()
                                            + ", which was claimed for "
                                            + where
                                            + ".",
                                    "Compare it with the plate, letter by letter.")
                            .seeing(conflict.mine());
            case SITE ->
                    Finding.of(
                            FindingCode.SITE_CLAIMED_BEFORE,
                            job.origin().cell(Field.SITE_STREET),
                            "A heater at this site was already claimed for " + where + ".",
                            remedy(
                                    job,
                                    conflict,
                                    "If this is another heater, say under \""
                                            + Field.SITE_POSITION.label()
                                            + "\" where it stands."));
        };
    }

    private static Field field(Job job, String serial) {
        if (job.heater().tankSerial().map(Serial::seen).filter(serial::equals).isPresent()) {
            return Field.TANK_SERIAL;
        }
        return job.heater().heatPumpSerial().map(Serial::seen).filter(serial::equals).isPresent()
                ? Field.HEAT_PUMP_SERIAL
                : Field.COLLECTOR_SERIALS;
    }
}
