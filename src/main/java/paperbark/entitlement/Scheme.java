package paperbark.entitlement;

import java.time.LocalDate;
import paperbark.job.Job;
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
}
