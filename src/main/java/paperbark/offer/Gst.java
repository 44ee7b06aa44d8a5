package paperbark.offer;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import paperbark.firm.Firm;
import paperbark.job.BenefitForm;
import paperbark.job.Job;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.Rounding;

/** Goods and services tax on what the owner pays. */
public final class Gst {
    private static final BigDecimal ELEVEN = BigDecimal.valueOf(11);

    private Gst() {}

    /**
     * GST included in a price: one eleventh, rounded to the nearest cent, half a cent up. Source: A
     * New Tax System (Goods and Services Tax) Act 1999 ss 9-70, 9-90.
     */
    public static Money includedIn(Money price) {
        return new ExactMoney(price.amount().divide(ELEVEN, MathContext.DECIMAL64))
                .round(Rounding.GST_ACT);
    }

    /**
     * What the owner pays for a job whose full price is known.
     *
     * <p>Certificates taken off the price lower what is payable and never the GST: ATO, GST and the
     * Small-scale Renewable Energy Scheme (QC 24820). A firm that is not registered shows no GST.
     */
    public static OwnerPrice of(Job job, Money fullPrice, Firm firm) {
        boolean discount = job.payment().form().map(f -> f == BenefitForm.DISCOUNT).orElse(false);
        Money assigned = Money.ZERO;
        if (discount) {
            for (var claim : List.of(job.stc(), job.veec())) {
                if (claim.claimed()) {
                    assigned = assigned.plus(claim.benefit().orElse(Money.ZERO));
                }
            }
        }
        Money gst = firm.gstRegistered() ? includedIn(fullPrice) : Money.ZERO;
        return new OwnerPrice(fullPrice, assigned, fullPrice.minus(assigned), gst);
    }
}
