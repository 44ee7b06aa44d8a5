package paperbark.offer;

import paperbark.firm.Offer;

/**
 * An offer that a claim cannot take.
 *
 * @param offer the offer
 * @param inForce whether it is in force on the day of the run
 * @param reason why not, to be read after the buyer's name
 */
public record LeftOut(Offer offer, boolean inForce, String reason) {

    /** Buyer and reason. */
    public String inWords() {
        return offer.buyer() + ": " + reason;
    }
}
