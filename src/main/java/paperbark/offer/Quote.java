package paperbark.offer;

import java.time.LocalDate;
import java.util.Comparator;
import paperbark.firm.Offer;
import paperbark.value.Money;

/**
 * An offer worked out for one claim.
 *
 * @param offer the offer
 * @param certificates how many
 * @param gross price of all certificates
 * @param fee kept back by the buyer
 * @param gst GST that the buyer pays on top, against the invoice of an owner in business; no part
 *     of the price, of the firm's income or of the ranking
 * @param split who gets the payment
 * @param days from the day of the run to the payment
 * @param due day of payment
 * @param waiting what it costs the firm to wait for its part
 * @param gstDivisor 11 means that an eleventh of a price is GST; zero where no rule is in force
 */
public record Quote(
        Offer offer,
        int certificates,
        Money gross,
        Money fee,
        Money gst,
        Split split,
        long days,
        LocalDate due,
        Money waiting,
        int gstDivisor) {
    /** The offer that is worth most to the firm first, then to the owner, then the sooner paid. */
    static final Comparator<Quote> BEST_FIRST =
            Comparator.comparing(Quote::worth)
                    .thenComparing(q -> q.split().netToOwner())
                    .reversed()
                    .thenComparing(Quote::days)
                    .thenComparing(q -> q.offer().buyer());

    /** The offer that pays soonest first; of these the one that is worth most. */
    static final Comparator<Quote> QUICKEST_FIRST =
            Comparator.comparing(Quote::days).thenComparing(BEST_FIRST);

    /** What the buyer pays for the certificates, without GST on top. */
    public Money paid() {
        return gross.minus(fee);
    }

    /** What it is worth to the firm today: its net less the cost of waiting. */
    public Money worth() {
        return split.netToFirm().minus(waiting);
    }
}
