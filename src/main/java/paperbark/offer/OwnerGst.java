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
        return job.owner().gstRegistered().orElse(false) && job.site().business().orElse(true);
    }
}
