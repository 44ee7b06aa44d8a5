package paperbark.firm;

import java.util.Optional;
import paperbark.value.DateRange;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * A buyer's dated price.
 *
 * @param buyer the buyer's name
 * @param scheme which certificates
 * @param inForce first and last day on which it can be taken
 * @param pricePerCertificate dollars a certificate; the terms say what it holds of GST
 * @param feePerClaim dollars kept back from each claim
 * @param minimum fewest certificates in a claim
 * @param maximum most certificates in a claim
 * @param paymentDays days from lodging to payment
 * @param terms further terms
 * @param row 1-based row of the offers table
 */
public record Offer(
        String buyer,
        SchemeName scheme,
        DateRange inForce,
        ExactMoney pricePerCertificate,
        Money feePerClaim,
        Optional<Integer> minimum,
        Optional<Integer> maximum,
        int paymentDays,
        OfferTerms terms,
        int row) {

    /** Whether one claim on one day could take both. */
    boolean overlaps(Offer other) {
        return other.buyer.equals(buyer)
                && other.scheme == scheme
                && other.inForce.overlaps(inForce)
                && minimum.orElse(0) <= other.maximum.orElse(Integer.MAX_VALUE)
                && other.minimum.orElse(0) <= maximum.orElse(Integer.MAX_VALUE)
                && terms.overlap(other.terms);
    }
}
