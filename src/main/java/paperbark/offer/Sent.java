package paperbark.offer;

import java.math.BigDecimal;
import paperbark.firm.GstBasis;
import paperbark.firm.Offer;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.Rounding;

/**
 * What a buyer sends for the certificates of a claim, whoever gets it.
 *
 * @param gross price of all certificates
 * @param fee kept back by the buyer
 * @param onTop GST that the buyer pays on top, against the invoice of an owner in business
 */
public record Sent(Money gross, Money fee, Money onTop) {

    /**
     * By an offer.
     *
     * @param taxable whether the owner owes GST on the assignment
     * @param divisor 11 means that an eleventh of a price is GST
     */
    public static Sent of(Offer offer, int certificates, boolean taxable, int divisor) {
        BigDecimal count = BigDecimal.valueOf(certificates);
        Money gross = cents(offer.pricePerCertificate().times(count));
        Money fee = offer.feePerClaim().plus(cents(offer.terms().feePerCertificate().times(count)));
        // rule: common practice, no source: an offer "plus GST" pays a tenth on top to an owner who
        // owes GST on the assignment, and to no one else.
        boolean onTop = taxable && offer.terms().gstBasis() == GstBasis.PLUS;
        return new Sent(gross, fee, onTop ? Gst.addedTo(gross, divisor) : Money.ZERO);
    }

    /** What the buyer pays for the certificates, without GST on top. */
    public Money net() {
        return gross.minus(fee);
    }

    /**
     * What of the GST on top an owner has who is paid: the GST that they owe.
     *
     * @param ownerGst that GST, in what the owner was promised
     */
    Money ofTop(Money ownerGst) {
        return ownerGst.compareTo(onTop) < 0 ? ownerGst : onTop;
    }

    /**
     * Whether these are its parts: what an owner in business was promised, or all where nothing
     * was, and what then is the firm's.
     */
    public boolean isShared(Money toOwner, Money toFirm, int divisor) {
        if (toOwner.equals(net().plus(onTop))) {
            return toFirm.isZero();
        }
        Money rest = net().minus(toOwner).plus(ofTop(Gst.includedIn(toOwner, divisor)));
        return toFirm.equals(rest.orNothing());
    }

    private static Money cents(ExactMoney amount) {
        return amount.round(Rounding.NEAREST_CENT);
    }
}
