package paperbark.offer;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.firm.Firm;
import paperbark.firm.GstRounding;
import paperbark.job.BenefitForm;
import paperbark.job.Job;
import paperbark.rules.Rulebook;
import paperbark.rules.Unkeyed;
import paperbark.value.Money;
import paperbark.value.Rounding;
import paperbark.value.SchemeName;

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
        return onInvoice(List.of(GstLine.price(price)), divisor, GstRounding.TOTAL_INVOICE);
    }

    /** GST to be added to a value without it, rounded the same way. */
    public static Money addedTo(Money value, int divisor) {
        return onInvoice(List.of(GstLine.value(value)), divisor, GstRounding.TOTAL_INVOICE);
    }

    /**
     * GST of an invoice with several supplies. Source: A New Tax System (Goods and Services Tax)
     * Act 1999 s 9-90: unrounded and then rounded once, or each rounded and then added; half a cent
     * goes up either way.
     *
     * @param divisor 11 means that an eleventh of a price is GST
     */
    public static Money onInvoice(List<GstLine> supplies, int divisor, GstRounding method) {
        // rule: gst-act-1999 s 9-90: unrounded and then rounded once, or each rounded and then
        // added.
        return switch (method) {
            case TOTAL_INVOICE ->
                    rounded(
                            supplies.stream()
                                    .map(s -> s.parts(divisor))
                                    .reduce(BigDecimal.ZERO, BigDecimal::add),
                            divisor);
            case TAXABLE_SUPPLY ->
                    supplies.stream()
                            .map(s -> rounded(s.parts(divisor), divisor))
                            .reduce(Money.ZERO, Money::plus);
        };
    }

    /**
     * GST on what a buyer pays the firm beyond the discount that it gave for the same claim; due
     * when it is paid. A buyer who pays less lowers nothing, neither the GST in the price nor that
     * on another claim.
     *
     * <p>Two readings: an eleventh of the full price and no more (ATO, GST and the Small-scale
     * Renewable Energy Scheme, QC 24820), or of all that customer and buyer pay (edited private
     * advice 1052028683343). Of each claim the one is taken that gives the higher GST.
     *
     * @param fullPrice the price that the payment adds to, where it is known
     * @param beyond what is paid beyond the discount; below zero where it is less
     */
    static Money onBeyond(
            Optional<Money> fullPrice, Money beyond, int divisor, GstRounding method) {
        // rule: ato-24820 GST on the full price: a buyer who pays less than the discount lowers
        // nothing.
        if (beyond.isNegative() || divisor == 0) {
            return Money.ZERO;
        }
        // rule: ato-1052028683343 answer: an eleventh of the customer's and the agent's payments.
        List<GstLine> before = fullPrice.stream().map(GstLine::price).toList();
        List<GstLine> after = new ArrayList<>(before);
        after.add(GstLine.price(beyond));
        return onInvoice(after, divisor, method).minus(onInvoice(before, divisor, method));
    }

    private static Money rounded(BigDecimal parts, int divisor) {
        // rule: gst-act-1999 s 9-90: to the nearest cent, half a cent up.
        BigDecimal whole = BigDecimal.valueOf((long) divisor * (divisor - 1));
        return new Money(parts.divide(whole, 2, Rounding.GST_ACT.mode()));
    }

    /** The share of a price that is GST on the day that counts; 11 is an eleventh. */
    public static Optional<Integer> divisor(Job job, Rulebook rulebook, LocalDate today) {
        // rule: common practice, no source: the rate of the day of the work; of today while it is
        // not known.
        LocalDate day = job.ruleDay().orElse(today);
        return rulebook.gst().on(day, Unkeyed.ALL).map(rule -> rule.row().priceDivisor());
    }

    /**
     * What the owner pays; empty while the full price is not known or no GST rule is in force on
     * the day.
     *
     * <p>Certificates taken off the price lower what is payable and never the GST: ATO, GST and the
     * Small-scale Renewable Energy Scheme (QC 24820). A firm that is not registered shows no GST.
     */
    public static Optional<OwnerPrice> of(Job job, Firm firm, Rulebook rulebook, LocalDate today) {
        return job.payment()
                .fullPrice()
                .flatMap(
                        full ->
                                divisor(job, rulebook, today)
                                        .map(divisor -> of(job, full, firm, divisor)));
    }

    private static OwnerPrice of(Job job, Money fullPrice, Firm firm, int divisor) {
        // rule: ato-24820 GST on the full price: a discount for the assignment lowers what is paid
        // and never the GST.
        Map<SchemeName, Money> discounts = new EnumMap<>(SchemeName.class);
        if (job.payment().form().equals(Optional.of(BenefitForm.DISCOUNT))) {
            job.claims()
                    .forEach(
                            (scheme, claim) ->
                                    claim.benefit()
                                            .filter(value -> claim.claimed())
                                            .ifPresent(value -> discounts.put(scheme, value)));
        }
        // rule: ato-24820 registration: a firm that is not registered charges no GST.
        Money gst = firm.gstRegistered() ? includedIn(fullPrice, divisor) : Money.ZERO;
        return new OwnerPrice(fullPrice, discounts, gst, divisor);
    }
}
