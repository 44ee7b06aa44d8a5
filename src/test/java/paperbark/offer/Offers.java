package paperbark.offer;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import paperbark.entitlement.Entitlement;
import paperbark.firm.Buyer;
import paperbark.firm.ByName;
import paperbark.firm.CountPolicy;
import paperbark.firm.Firm;
import paperbark.firm.FirmTables;
import paperbark.firm.GstBasis;
import paperbark.firm.GstRounding;
import paperbark.firm.MoneyPolicy;
import paperbark.firm.Offer;
import paperbark.firm.OfferPolicy;
import paperbark.firm.OfferTerms;
import paperbark.firm.PaidTo;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.value.DateRange;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.SchemeName;
import paperbark.value.State;

/** Offers, firms and claims for tests; every offer is for STCs, in force, and pays in 14 days. */
final class Offers {
    static final String KESTREL = "Kestrel Certificates";
    static final String PIPIT = "Pipit and Wren";
    static final String WHIMBREL = "Whimbrel Exchange";

    private Offers() {}

    static Offer offer(String buyer, String price) {
        return offer(buyer, price, 14);
    }

    static Offer offer(String buyer, String price, int days) {
        return offer(buyer, price, days, OfferTerms.PLAIN);
    }

    static Offer offer(String buyer, String price, int days, OfferTerms terms) {
        return new Offer(
                buyer,
                SchemeName.STC,
                DateRange.ALWAYS,
                new ExactMoney(new BigDecimal(price)),
                Money.ZERO,
                Optional.empty(),
                Optional.empty(),
                days,
                terms,
                2);
    }

    static OfferTerms zones(Integer... zones) {
        return terms(GstBasis.PLUS, "0", Set.of(zones), Set.of(), PaidTo.EITHER);
    }

    static OfferTerms states(State... states) {
        return terms(GstBasis.PLUS, "0", Set.of(), Set.of(states), PaidTo.EITHER);
    }

    static OfferTerms paidTo(PaidTo whom) {
        return terms(GstBasis.PLUS, "0", Set.of(), Set.of(), whom);
    }

    static OfferTerms basis(GstBasis basis) {
        return terms(basis, "0", Set.of(), Set.of(), PaidTo.EITHER);
    }

    static OfferTerms feeEach(String fee) {
        return terms(GstBasis.PLUS, fee, Set.of(), Set.of(), PaidTo.EITHER);
    }

    private static OfferTerms terms(
            GstBasis basis, String fee, Set<Integer> zones, Set<State> states, PaidTo whom) {
        return new OfferTerms(
                basis, new ExactMoney(new BigDecimal(fee)), zones, states, whom, Optional.empty());
    }

    static MoneyPolicy policy(OfferPolicy choice, String preferred, String margin, String cost) {
        return new MoneyPolicy(
                choice,
                Optional.of(preferred).filter(p -> !p.isEmpty()),
                Money.of(margin),
                new BigDecimal(cost),
                GstRounding.TOTAL_INVOICE,
                CountPolicy.RULES);
    }

    static MoneyPolicy costing(String percent) {
        return policy(OfferPolicy.HIGHEST_NET, "", "0", percent);
    }

    static FirmTables tables(MoneyPolicy policy, boolean gstRegistered, Offer... offers) {
        FirmTables t = Register.TABLES;
        return new FirmTables(
                firm(policy, gstRegistered),
                t.people(),
                t.makers(),
                t.products(),
                t.sellers(),
                t.buyers(),
                List.of(offers),
                t.statePapers(),
                t.words(),
                t.accounts());
    }

    /** The same tables with Pipit and Wren standing for the firm itself. */
    static FirmTables ownPipit(FirmTables t) {
        return new FirmTables(
                t.firm(),
                t.people(),
                t.makers(),
                t.products(),
                t.sellers(),
                ByName.of(
                        t.buyers().stream().map(b -> b.name().equals(PIPIT) ? own(b) : b).toList(),
                        Buyer::name),
                t.offers(),
                t.statePapers(),
                t.words(),
                t.accounts());
    }

    private static Buyer own(Buyer b) {
        return new Buyer(
                b.name(),
                b.abn(),
                b.registrations(),
                b.address(),
                b.phone(),
                b.email(),
                b.forms(),
                b.entries(),
                true);
    }

    static Firm firm(MoneyPolicy policy, boolean gstRegistered) {
        Firm f = Register.TABLES.firm();
        return new Firm(
                f.name(),
                f.abn(),
                f.acn(),
                gstRegistered,
                f.address(),
                f.phone(),
                f.afterHours(),
                f.email(),
                f.workmanshipYears(),
                f.claimCosts(),
                f.ownersCopies(),
                f.fillable(),
                f.accountName(),
                f.bsb(),
                f.account(),
                policy);
    }

    /** What a firm registered for GST chooses for that many STCs in zone 4. */
    static Comparison compare(Job job, MoneyPolicy policy, int certificates, Offer... offers) {
        return choose(job, tables(policy, true, offers), certificates).comparison().orElseThrow();
    }

    static OfferChoice.Chosen choose(Job job, FirmTables tables, int certificates) {
        Entitlement entitlement =
                new Entitlement(
                        SchemeName.STC,
                        Optional.of(certificates),
                        Optional.of(4),
                        Optional.empty(),
                        Optional.empty(),
                        false,
                        List.of());
        return new OfferChoice(tables, Register.RULES, Register.TODAY).choose(job, entitlement);
    }

    /** A job that claims STCs: benefit in dollars, its form, and what the owner says of GST. */
    static Job job(String benefit, String form, String gst, String business) {
        return Register.job(
                "Claim STCs,STC benefit,Full price,Benefit form,Owner registered for GST,Business premises\n"
                        + String.join(",", "yes", benefit, "5500", form, gst, business));
    }

    static Job discount(String benefit) {
        return job(benefit, "discount", "no", "no");
    }
}
