package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Set;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.rules.Rulebook;
import paperbark.value.SchemeName;

/**
 * Small-scale technology certificates for solar water heaters and air-source heat pumps.
 *
 * <p>The federal register gives a figure for model, zone and period on a ten-year basis; of it, an
 * installation earns the years left until the end of 2030. Source: Renewable Energy (Electricity)
 * Act 2000 ss 21 and 22, Regulations 2001 regs 19 to 19B; how each was read is said in the page
 * beside the rule tables.
 *
 * <p>A job of which a needed fact is missing gets an entitlement without a number; the missing fact
 * is reported by the job's own checks.
 */
public final class StcScheme implements Scheme {
    /** Label of the working step that gives the number of certificates. */
    public static final String COUNT = "STCs for this job";

    @Override
    public SchemeName name() {
        return SchemeName.STC;
    }

    @Override
    public Assessment assess(Job job, Rulebook rulebook, LocalDate today) {
        return job.stc().claimed() ? new StcAssessment(job, rulebook).run(today) : Assessment.NONE;
    }

    @Override
    public Set<JobFact> hangsOn() {
        return ClaimFacts.of(name(), Field.COMPLETE_SYSTEM, Field.DECLARATIONS_DATE);
    }
}
