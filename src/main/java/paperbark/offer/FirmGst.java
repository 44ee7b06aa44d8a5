package paperbark.offer;

import java.util.List;
import java.util.Optional;
import paperbark.firm.Firm;
import paperbark.firm.GstRounding;
import paperbark.value.Money;

/**
 * What a job means for the firm's own GST: on the full price, and on what buyers pay it beyond the
 * discounts that it gave ({@link Gst#onBeyond}). The sale and the assignments are never netted.
 *
 * @param onPrice GST in the full price
 * @param beyond what buyers pay the firm beyond the discounts, claim by claim; a claim that brings
 *     less counts for nothing
 * @param onBeyond GST on that, due when it is paid
 * @param byPayments the other reading for comparison: an eleventh of all that customer and buyers
 *     pay, those who pay less included (edited private advice 1052028683343)
 * @param given what the owner has for the assignments, off the price or paid
 * @param ownerGst GST that an owner registered and in business owes on the assignments
 * @param credit what the firm may claim of that once it holds the owner's tax invoice: only where
 *     the firm itself is the buyer; otherwise owner and buyer deal with each other (edited private
 *     advice 1013003639462; QC 24820)
 */
public record FirmGst(
        Money onPrice,
        Money beyond,
        Money onBeyond,
        Money byPayments,
        Money given,
        Money ownerGst,
        Money credit) {

    /**
     * The figures of a job.
     *
     * @param benefits what the owner has of the claims that count
     * @param coming the money expected for the claims that count
     */
    public static FirmGst of(
            OwnerPrice price, List<Benefit> benefits, List<Expected> coming, Firm firm) {
        Money signed = sum(coming.stream().map(e -> e.split().beyond()).toList());
        Money more =
                sum(
                        coming.stream()
                                .map(e -> e.split().beyond())
                                .filter(b -> !b.isNegative())
                                .toList());
        return new FirmGst(
                price.gst(),
                more,
                sum(coming.stream().map(e -> e.split().firmGst()).toList()),
                firm.gstRegistered()
                        ? Gst.onInvoice(
                                List.of(GstLine.price(price.fullPrice()), GstLine.price(signed)),
                                price.gstDivisor(),
                                GstRounding.TOTAL_INVOICE)
                        : Money.ZERO,
                sum(benefits.stream().map(Benefit::value).flatMap(Optional::stream).toList()),
                sum(benefits.stream().map(Benefit::ownerGst).flatMap(Optional::stream).toList()),
                // rule: ato-1013003639462 answer: the right is not assigned to a firm that is no
                // buyer,
                // so the credit of ato-24820 belongs to whoever acquires it.
                firm.gstRegistered()
                        ? sum(
                                benefits.stream()
                                        .filter(Benefit::ours)
                                        .map(Benefit::ownerGst)
                                        .flatMap(Optional::stream)
                                        .toList())
                        : Money.ZERO);
    }

    private static Money sum(List<Money> all) {
        return all.stream().reduce(Money.ZERO, Money::plus);
    }

    /** GST that the firm owes for the job, the buyers' payments included. */
    public Money owed() {
        return onPrice.plus(onBeyond);
    }
}
