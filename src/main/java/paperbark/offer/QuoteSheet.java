package paperbark.offer;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import paperbark.firm.Buyer;
import paperbark.firm.FirmTables;
import paperbark.firm.Offer;
import paperbark.value.Money;

/** Works out what an offer brings for a claim. */
final class QuoteSheet {
    private static final BigDecimal PERCENT_DAYS = BigDecimal.valueOf(100L * 365);

    private final ClaimForOffer claimed;
    private final FirmTables tables;
    private final int divisor;

    QuoteSheet(ClaimForOffer claimed, FirmTables tables) {
        this.claimed = claimed;
        this.tables = tables;
        this.divisor = claimed.gstDivisor().orElse(0);
    }

    Quote of(Offer offer) {
        Sent sent = Sent.of(offer, claimed.certificates(), claimed.isTaxable(), divisor);
        Split split = split(sent, isOwn(offer));
        // rule: common practice, no source: payment days count from the lodging, which is today or
        // the later day of the work.
        LocalDate due = claimed.lodged().plusDays(offer.paymentDays());
        long days = ChronoUnit.DAYS.between(claimed.today(), due);
        return new Quote(
                offer,
                claimed.certificates(),
                sent.gross(),
                sent.fee(),
                sent.onTop(),
                split,
                days,
                due,
                waiting(split.toFirm(), days),
                divisor);
    }

    private Split split(Sent sent, boolean own) {
        // rule: common practice, no source: a buyer pays the owner what they were promised, or all
        // where no sum was named; the rest is the firm's.
        Money toOwner =
                claimed.paysOwner()
                        ? claimed.benefit().orElse(sent.net().plus(sent.onTop()))
                        : Money.ZERO;
        Money discount = claimed.isDiscount() ? claimed.benefit().orElse(Money.ZERO) : Money.ZERO;
        Money benefit = claimed.paysOwner() ? toOwner : discount;
        Money ownerGst = claimed.isTaxable() ? Gst.includedIn(benefit, divisor) : Money.ZERO;
        Money ofTop = claimed.paysOwner() ? ofTop(sent, ownerGst) : Money.ZERO;
        Money toFirm = sent.net().minus(toOwner).plus(ofTop);
        // Certificates that the firm takes itself are its own to sell; that is another deal.
        Money beyond = own ? Money.ZERO : beyond(toFirm, discount);
        return new Split(
                toOwner,
                ofTop,
                toFirm,
                benefit,
                beyond,
                claimed.firm().gstRegistered()
                        ? Gst.onBeyond(
                                claimed.job().payment().fullPrice(),
                                beyond,
                                divisor,
                                claimed.firm().money().gstRounding())
                        : Money.ZERO,
                ownerGst);
    }

    /** An owner who is paid has their GST out of it, or all of it where nothing was promised. */
    private Money ofTop(Sent sent, Money ownerGst) {
        return claimed.benefit().isPresent() ? sent.ofTop(ownerGst) : sent.onTop();
    }

    private boolean isOwn(Offer offer) {
        return tables.buyer(offer.buyer()).map(Buyer::own).orElse(false);
    }

    /** Nothing is said where the register does not tell what the owner was given. */
    private Money beyond(Money toFirm, Money discount) {
        // rule: how-we-read GST on what a buyer pays: what is beyond the discount follows only from
        // a discount that the register tells.
        boolean known =
                claimed.benefit().isPresent() && (claimed.paysOwner() || claimed.isDiscount());
        return known ? toFirm.minus(discount) : Money.ZERO;
    }

    private Money waiting(Money toFirm, long days) {
        // rule: common practice, no source: simple interest on the firm's part at its own yearly
        // rate, a year having 365 days.
        BigDecimal rate = claimed.firm().money().costOfMoney();
        if (toFirm.isNegative() || days <= 0) {
            return Money.ZERO;
        }
        return new Money(
                toFirm.amount()
                        .multiply(rate)
                        .multiply(BigDecimal.valueOf(days))
                        .divide(PERCENT_DAYS, 2, RoundingMode.HALF_UP));
    }
}
