package paperbark.offer;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.firm.Buyer;
import paperbark.firm.Offer;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * Money expected for one claim.
 *
 * @param scheme which certificates
 * @param buyer who pays
 * @param offer the offer taken
 * @param certificates how many
 * @param gross price of all certificates
 * @param fee kept back by the buyer
 * @param gst paid on top against the tax invoice of an owner in business; never the firm's income
 * @param net what the buyer pays for the certificates: gross less fee, without GST on top
 * @param split whose it is
 * @param due day of payment when lodged on the day of the run
 * @param runnerUp the next best offer, where there is one
 * @param runnerUpNet what its buyer would pay out
 */
public record Expected(
        SchemeName scheme,
        Buyer buyer,
        Offer offer,
        int certificates,
        Money gross,
        Money fee,
        Money gst,
        Money net,
        Split split,
        LocalDate due,
        Optional<Offer> runnerUp,
        Optional<Money> runnerUpNet) {

    static Expected of(Buyer buyer, Quote taken, Optional<Quote> runnerUp) {
        return new Expected(
                taken.offer().scheme(),
                buyer,
                taken.offer(),
                taken.certificates(),
                taken.gross(),
                taken.fee(),
                taken.gst(),
                taken.paid(),
                taken.split(),
                taken.due(),
                runnerUp.map(Quote::offer),
                runnerUp.map(Quote::paid));
    }

    /** GST paid on top that no owner is paid: whose it is, a tax adviser must say. */
    public Money topLeft() {
        return gst.minus(split.ofTop());
    }
}
