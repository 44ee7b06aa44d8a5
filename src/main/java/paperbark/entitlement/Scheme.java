package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.value.SchemeName;

/**
 * A certificate scheme: one class, its rule tables and a default template. It answers all that
 * differs between schemes.
 */
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

    /**
     * Until when the certificates of work done on a day are created; empty where no rule says.
     *
     * @param done day of the work
     */
    Optional<ClosingDate> closing(LocalDate done, Rulebook rulebook);

    /**
     * For how many years its papers are kept; empty where no rule says.
     *
     * @param created day on which the certificates were created, from which the years are counted
     */
    Optional<Dated<Setting>> keepYears(LocalDate created, Rulebook rulebook);

    /**
     * The last day until which work that is only planned may be done for the number worked out for
     * it; empty where the number does not hang on the year.
     *
     * @param planned day for which the number was worked out
     */
    default Optional<LocalDate> sameUntil(LocalDate planned) {
        return Optional.empty();
    }

    /** The variant of its assignment paper where neither offer nor buyer names one. */
    default String fallbackPaper() {
        return "default";
    }

    /** The facts that its assignment prints beside those that every assignment prints. */
    default Set<JobFact> alsoPrinted() {
        return Set.copyOf(JobFact.ALL);
    }

    /** Whether its assignment says if certificates of the other schemes are assigned too. */
    default boolean tellsOfOthers() {
        return true;
    }

    /** Labels of the working steps that speak for the whole sum where there is no room for all. */
    default Set<String> sums() {
        return Set.of(name().word() + "s for this job");
    }
}
