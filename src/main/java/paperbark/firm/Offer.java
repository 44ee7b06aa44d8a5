package paperbark.firm;

import java.util.Optional;
import paperbark.value.DateRange;
import paperbark.value.ExactMoney;
import paperbark.value.Money;

/**
 * A buyer's dated price.
 *
 * @param buyer the buyer's name
 * @param scheme which certificates
 * @param inForce first and last day on which it can be taken
 * @param pricePerCertificate dollars a certificate, without GST
 * @param feePerClaim dollars kept back from each claim
 * @param minimum fewest certificates in a claim
 * @param maximum most certificates in a claim
 * @param paymentDays days from lodging to payment
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
        int row) {}
