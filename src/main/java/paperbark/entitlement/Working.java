package paperbark.entitlement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.Stage;
import paperbark.rules.Dated;
import paperbark.rules.RuleTable;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/** Gathers the steps and findings of one job under one scheme, in the order they arise. */
final class Working {
    private final SchemeName scheme;
    private final Concern concern;
    private final Job job;
    private final List<Step> steps = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    Working(SchemeName scheme, Job job) {
        this.scheme = scheme;
        this.concern = Concern.claim(scheme);
        this.job = job;
    }

    Job job() {
        return job;
    }

    List<Step> steps() {
        return steps;
    }

    /** Whether the work is done and its day known; until then all is provisional. */
    boolean isInstalled() {
        return job.stage() == Stage.INSTALLED && job.installedOn().isPresent();
    }

    void step(String label, String working, String result, RuleRef... rules) {
        steps.add(new Step(label, working, result, List.of(rules)));
    }

    /** The start of a finding at the cell of a field. */
    Finding at(Field field, FindingCode code, String fact, String remedy) {
        return Finding.of(code, job.origin().cell(field), fact, remedy);
    }

    /** Keeps a finding; a stop that could hold the papers of all schemes holds this one's alone. */
    void report(Finding finding) {
        Set<Concern> holds = new HashSet<>(finding.holds());
        if (holds.containsAll(Concern.CLAIMS)) {
            holds.removeAll(Concern.CLAIMS);
            holds.add(concern);
        }
        findings.add(finding.holding(holds).forJob(job.reference()));
    }

    /** Keeps a finding that holds whatever the catalogue says. */
    void reportForAll(Finding finding) {
        findings.add(finding.forJob(job.reference()));
    }

    /** The row for a day and key; its absence is a stop. */
    <K, R> Optional<Dated<R>> rule(RuleTable<K, R> table, LocalDate day, K key) {
        Optional<Dated<R>> found = table.on(day, key);
        if (found.isEmpty()) {
            report(
                    at(
                                    dayField(),
                                    FindingCode.RULE_MISSING,
                                    "For %ss, %s."
                                            .formatted(scheme.word(), table.missing(day, key)),
                                    "Correct the date, or add the row with its source to rules/"
                                            + table.name()
                                            + " in the firm's tables.")
                            .seeing(Days.show(day)));
        }
        return found;
    }

    /** The column that the day came from. */
    Field dayField() {
        return job.installedOn().isPresent() ? Field.INSTALLED_DATE : Field.VISIT_DATE;
    }

    /** Whether a field's cell could be used; findings on cells that could not are the reader's. */
    boolean couldRead(Field... fields) {
        return Set.of(fields).stream().noneMatch(job.unread()::contains);
    }

    /** Where a fact comes from, for the working. */
    String from(Field field) {
        return job.origin().from(field);
    }

    /**
     * Whether one of these stops leaves no number; the step of that label then says which.
     *
     * @param codes after which the job earns nothing, whatever the sum says
     */
    boolean isNothing(String label, Set<FindingCode> codes) {
        Optional<Finding> nothing =
                findings.stream().filter(f -> codes.contains(f.code())).findFirst();
        nothing.ifPresent(
                stop ->
                        steps.add(
                                new Step(
                                        label,
                                        stop.fact(),
                                        "none",
                                        stop.rule().stream().toList())));
        return nothing.isPresent();
    }

    Assessment assessment(Entitlement entitlement) {
        return new Assessment(Optional.of(entitlement), findings);
    }
}
