package paperbark.offer;

import java.util.List;
import paperbark.firm.Firm;
import paperbark.job.BenefitForm;
import paperbark.job.Job;
import paperbark.value.Money;

/**
 * What a job means for the firm's own GST. GST lies on everything that the firm gets for the
 * installed heater: on the full price, and on what a buyer pays it beyond the discount that it
 * gave. Source: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820), and edited private
 * advice 1052028683343: an eleventh of the customer's and the agent's payments. The sale and the
 * assignment are never netted: a buyer who pays less than the discount lowers nothing.
 *
 * @param onPrice GST in the full price
 * @param beyond what buyers pay the firm beyond the discount; zero where it is less
 * @param onBeyond GST on that, due when it is paid
 * @param given what the owner has for the assignment, off the price or paid
 * @param ownerGst GST that an owner registered and in business owes on the assignment
 * @param credit what the firm may claim of that once it holds the owner's tax invoice
 */
public record FirmGst(
        Money onPrice, Money beyond, Money onBeyond, Money given, Money ownerGst, Money credit) {

    /** The figures of a job. */
    public static FirmGst of(OwnerPrice price, List<Expected> expected, Job job, Firm firm) {
        Money sum = expected.stream().map(e -> e.split().beyond()).reduce(Money.ZERO, Money::plus);
        // rule: how-we-read GST on what a buyer pays: a buyer who pays less than the discount
        // lowers
        // nothing.
        Money beyond = sum.isNegative() ? Money.ZERO : sum;
        int divisor = price.gstDivisor();
        // rule: ato-1052028683343 answer: an eleventh of the customer's and the agent's payments.
        Money all =
                firm.gstRegistered()
                        ? Gst.onInvoice(
                                List.of(GstLine.price(price.fullPrice()), GstLine.price(beyond)),
                                divisor,
                                firm.money().gstRounding())
                        : Money.ZERO;
        Money given = price.assigned().plus(paidToOwner(expected));
        Money ownerGst = OwnerGst.isOwed(job) ? Gst.includedIn(given, divisor) : Money.ZERO;
        // rule: ato-24820 input tax credits: whoever acquires the right from an owner who owes GST
        // may claim it; the firm is taken to acquire it where it gave the discount.
        boolean acquires =
                firm.gstRegistered()
                        && job.payment().form().map(f -> f == BenefitForm.DISCOUNT).orElse(false);
        return new FirmGst(
                price.gst(),
                beyond,
                all.minus(price.gst()),
                given,
                ownerGst,
                acquires ? ownerGst : Money.ZERO);
    }

    private static Money paidToOwner(List<Expected> expected) {
        return expected.stream().map(e -> e.split().toOwner()).reduce(Money.ZERO, Money::plus);
    }

    /** GST that the firm owes for the job, the buyer's payment included. */
    public Money owed() {
        return onPrice.plus(onBeyond);
    }
}
