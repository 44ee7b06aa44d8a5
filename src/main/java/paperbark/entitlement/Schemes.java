package paperbark.entitlement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.firm.CountPolicy;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.rules.Rulebook;
import paperbark.value.SchemeName;

/**
 * The schemes that are worked out, in the order in which paper shows them.
 *
 * @param all one each
 */
public record Schemes(List<Scheme> all) {
    /** Every scheme that the program knows. To add one, add its class here. */
    public static final Schemes KNOWN = new Schemes(List.of(new StcScheme(), new VeecScheme()));

    /**
     * What all schemes together say of a job.
     *
     * @param entitlements one entry for each scheme that the job claims under
     * @param findings what was noticed, in order of the schemes
     */
    public record Assessed(Entitlements entitlements, List<Finding> findings) {

        /** Keeps the findings from being changed. */
        public Assessed {
            findings = List.copyOf(findings);
        }
    }

    /** Keeps the list from being changed. */
    public Schemes {
        all = List.copyOf(all);
    }

    /** The scheme of a name. */
    public Scheme of(SchemeName name) {
        return all.stream().filter(scheme -> scheme.name() == name).findFirst().orElseThrow();
    }

    /**
     * Asks every known scheme.
     *
     * @param today the day of the run, for closing dates
     * @param policy which number is claimed where the register names a lower one
     */
    public static Assessed assess(Job job, Rulebook rulebook, LocalDate today, CountPolicy policy) {
        return KNOWN.ask(job, rulebook, today, policy);
    }

    /** Asks these schemes. */
    public Assessed ask(Job job, Rulebook rulebook, LocalDate today, CountPolicy policy) {
        RegisterCount count = new RegisterCount(job, policy);
        List<Entitlement> entitlements = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        for (Scheme scheme : all) {
            Assessment assessment = count.settle(scheme.assess(job, rulebook, today));
            assessment.entitlement().ifPresent(entitlements::add);
            findings.addAll(assessment.findings());
        }
        return new Assessed(new Entitlements(entitlements), findings);
    }

    /** The facts that a claim hangs on, by scheme. */
    public Map<SchemeName, Set<JobFact>> hangsOn() {
        return all.stream().collect(Collectors.toMap(Scheme::name, Scheme::hangsOn));
    }
}
