package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Set;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.rules.Rulebook;
import paperbark.value.SchemeName;

/**
 * Victorian energy efficiency certificates for domestic water heaters.
 *
 * <p>One certificate is one tonne of CO2-e abated over the life of the upgrade. Old and new heater
 * decide the activity; the count comes from the factors of the Specifications or from a published
 * list, both of which the firm enters, because they could not be read. With neither, the job gets
 * an entitlement without a number and a check that says which table lacks what. Source: Victorian
 * Energy Efficiency Target Act 2007 ss 17 and 18, Regulations 2018, Specifications 2018; how each
 * was read is said in the page beside the rule tables.
 */
public final class VeecScheme implements Scheme {
    /** Label of the working step that gives the number of certificates. */
    public static final String COUNT = "VEECs for this job";

    /** Label of the working step that gives the tonnes before rounding. */
    public static final String TONNES = "Tonnes of CO2-e";

    @Override
    public SchemeName name() {
        return SchemeName.VEEC;
    }

    @Override
    public Assessment assess(Job job, Rulebook rulebook, LocalDate today) {
        return job.veec().claimed()
                ? new VeecAssessment(job, rulebook).run(today)
                : Assessment.NONE;
    }

    @Override
    public Set<JobFact> hangsOn() {
        return ClaimFacts.of(
                name(),
                Field.OLD_KIND,
                Field.OLD_DISABLED,
                Field.OLD_DISPOSAL,
                Field.OLD_REMOVED_DATE,
                Field.CO_PAYMENT);
    }
}
