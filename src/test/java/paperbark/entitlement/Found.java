package paperbark.entitlement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.job.Job;
import paperbark.job.Jobs;
import paperbark.rules.Rulebook;

/** What a scheme said of a job, for tests. */
record Found(Assessment assessment) {
    static final Rulebook SHIPPED = Rulebook.load(Optional.empty());
    static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    static Found stc(Jobs jobs) {
        return stc(jobs, TODAY);
    }

    static Found stc(Jobs jobs, LocalDate today) {
        return of(new StcScheme(), jobs.job(), SHIPPED, today);
    }

    static Found of(Scheme scheme, Job job, Rulebook rules, LocalDate today) {
        Found found = new Found(scheme.assess(job, rules, today));
        assertThat(found.assessment.findings())
                .allSatisfy(f -> assertThat(f.job()).contains(job.reference()));
        return found;
    }

    Entitlement entitlement() {
        return assessment.entitlement().orElseThrow();
    }

    Optional<Integer> count() {
        return entitlement().certificates();
    }

    List<FindingCode> codes() {
        return assessment.findings().stream().map(Finding::code).toList();
    }

    Finding finding(FindingCode code) {
        return assessment.findings().stream()
                .filter(f -> f.code() == code)
                .findFirst()
                .orElseThrow(() -> new AssertionError(code + " is not among " + codes()));
    }

    String fact(FindingCode code) {
        return finding(code).fact();
    }

    Step step(String label) {
        return entitlement().steps().stream()
                .filter(s -> s.label().equals(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no step " + label));
    }
}
