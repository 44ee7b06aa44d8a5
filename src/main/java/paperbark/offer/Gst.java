package paperbark.offer;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.Optional;
import paperbark.firm.Firm;
import paperbark.job.BenefitForm;
import paperbark.job.Claim;
import paperbark.job.Job;
import paperbark.rules.Rulebook;
import paperbark.rules.Unkeyed;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.Rounding;

/** Goods and services tax on what the owner pays. */
public final class Gst {
    private Gst() {}

    /**
     * GST included in a price, rounded to the nearest cent, half a cent up. Source: A New Tax
     * System (Goods and Services Tax) Act 1999 s 9-90.
     *
     * @param price with GST
     * @param divisor 11 means that an eleventh of the price is GST
     */
    public static Money includedIn(Money price, int divisor) {
        BigDecimal exact =
                price.amount().divide(BigDecimal.valueOf(divisor), MathContext.DECIMAL64);
        return new ExactMoney(exact).round(Rounding.GST_ACT);
    }

    /**
     * What the owner pays; empty while the full price is not known or no GST rule is in force on
     * the day.
     *
     * <p>Certificates taken off the price lower what is payable and never the GST: ATO, GST and the
     * Small-scale Renewable Energy Scheme (QC 24820). A firm that is not registered shows no GST.
     */
    public static Optional<OwnerPrice> of(Job job, Firm firm, Rulebook rulebook, LocalDate today) {
        LocalDate day = job.ruleDay().orElse(today);
        return job.payment()
                .fullPrice()
                .flatMap(
                        full ->
                                rulebook.gst()
                                        .on(day, Unkeyed.ALL)
                                        .map(
                                                rule ->
                                                        of(
                                                                job,
                                                                full,
                                                                firm,
                                                                rule.row().priceDivisor())));
    }

    private static OwnerPrice of(Job job, Money fullPrice, Firm firm, int divisor) {
        boolean discount = job.payment().form().map(f -> f == BenefitForm.DISCOUNT).orElse(false);
        Money assigned = discount ? given(job.stc()).plus(given(job.veec())) : Money.ZERO;
        Money gst = firm.gstRegistered() ? includedIn(fullPrice, divisor) : Money.ZERO;
        return new OwnerPrice(fullPrice, assigned, fullPrice.minus(assigned), gst, divisor);
    }

    private static Money given(Claim claim) {
        return claim.claimed() ? claim.benefit().orElse(Money.ZERO) : Money.ZERO;
    }
}
