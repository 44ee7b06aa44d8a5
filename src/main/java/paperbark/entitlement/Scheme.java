package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Set;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.rules.Rulebook;
import paperbark.value.SchemeName;

/** A certificate scheme: one class, its rule tables and a default template. */
public interface Scheme {

    /** Its name. */
    SchemeName name();

    /**
     * What the job earns.
     *
     * @param job as far as it is known
     * @param rulebook the rules
     * @param today the day of the run, for closing dates
     */
    Assessment assess(Job job, Rulebook rulebook, LocalDate today);

    /**
     * The facts that a claim hangs on: what is worked out from them, and what tells the heater, its
     * site and what was asked for. One that changes once the claim is with the buyer makes another
     * claim of it.
     */
    Set<JobFact> hangsOn();
}
