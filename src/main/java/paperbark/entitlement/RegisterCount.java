package paperbark.entitlement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.CountPolicy;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.Job;

/**
 * Claims the number of certificates that the register names: where no number can be worked out, and
 * where it is lower and the firm wants to claim no more than it says.
 */
record RegisterCount(Job job, CountPolicy policy) {

    /** The assessment with the number that goes onto the papers. */
    Assessment settle(Assessment assessment) {
        if (assessment.entitlement().isEmpty()) {
            return assessment;
        }
        Entitlement entitlement = assessment.entitlement().get();
        Optional<Integer> said = job.claim(entitlement.scheme()).declaredCount();
        Optional<Integer> counted = entitlement.certificates();
        if (said.isEmpty()) {
            return assessment;
        }
        if (counted.isEmpty()) {
            return isOpen(assessment) ? unproved(assessment, entitlement, said.get()) : assessment;
        }
        boolean lower = said.get() < counted.get() && policy == CountPolicy.REGISTER;
        return lower
                ? new Assessment(
                        Optional.of(
                                claiming(
                                        entitlement,
                                        said.get(),
                                        "; the rules give %d".formatted(counted.get()))),
                        assessment.findings())
                : assessment;
    }

    /** Whether nothing but a figure is missing. */
    private boolean isOpen(Assessment assessment) {
        return job.heater().product().isPresent()
                && job.ruleDay().isPresent()
                && assessment.findings().stream().noneMatch(Finding::stops);
    }

    private Assessment unproved(Assessment assessment, Entitlement entitlement, int said) {
        Field field = Field.of(entitlement.scheme(), ClaimFact.COUNT);
        List<Finding> findings = new ArrayList<>(assessment.findings());
        findings.add(
                Finding.of(
                                FindingCode.COUNT_UNPROVED,
                                job.origin().cell(field),
                                "The papers claim the register's own %d %ss, because no number can be worked out."
                                        .formatted(said, entitlement.scheme().word()),
                                "Compare the number with the scheme's own calculator.")
                        .seeing(Integer.toString(said))
                        .forJob(job.reference()));
        return new Assessment(Optional.of(claiming(entitlement, said, "")), findings);
    }

    private Entitlement claiming(Entitlement entitlement, int count, String beside) {
        List<Step> steps = new ArrayList<>(entitlement.steps());
        Field field = Field.of(entitlement.scheme(), ClaimFact.COUNT);
        steps.add(
                new Step(
                        Entitlement.FROM_REGISTER,
                        job.origin().from(field) + beside,
                        Integer.toString(count),
                        List.of()));
        return EntitlementBuilder.builder(entitlement)
                .certificates(Optional.of(count))
                .steps(steps)
                .build();
    }
}
