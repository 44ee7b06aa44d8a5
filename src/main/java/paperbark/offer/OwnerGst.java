package paperbark.offer;

import paperbark.job.Job;

/**
 * Whether an owner owes GST on the assignment: registered, and the heater used in business. Source:
 * ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820).
 */
public final class OwnerGst {
    private OwnerGst() {}

    /**
     * Whether it is owed; also where the register does not say that the site is business premises,
     * as long as it does not say that it is none.
     */
    public static boolean isOwed(Job job) {
        // rule: ato-24820 system owners: GST is owed by an owner who is registered and uses the
        // heater in business; where the register does not say which, it is taken as owed.
        return job.owner().gstRegistered().orElse(false) && job.site().business().orElse(true);
    }
}
