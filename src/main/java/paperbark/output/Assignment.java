package paperbark.output;

import paperbark.offer.Standing;

/**
 * What becomes of the assignment of a scheme's certificates.
 *
 * @param isClaimed whether the job claims under the scheme
 * @param isHeld whether a stop keeps the assignment back
 * @param goesOut whether the assignment goes out, so that papers and sums may count on it
 * @param earnsNothing whether the job claims and earns no certificate
 */
public record Assignment(boolean isClaimed, boolean isHeld, boolean goesOut, boolean earnsNothing) {

    /** By how the claim stands. */
    static Assignment of(Standing standing) {
        return new Assignment(
                standing != Standing.NOT_CLAIMED,
                standing == Standing.HELD,
                standing.counts(),
                standing == Standing.NOTHING);
    }
}
