package paperbark.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.groups.Tuple.tuple;
import static paperbark.offer.Offers.KESTREL;
import static paperbark.offer.Offers.PIPIT;
import static paperbark.offer.Offers.WHIMBREL;
import static paperbark.offer.Offers.compare;
import static paperbark.offer.Offers.costing;
import static paperbark.offer.Offers.discount;
import static paperbark.offer.Offers.offer;
import static paperbark.offer.Offers.policy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.entitlement.Step;
import paperbark.finding.FindingCode;
import paperbark.firm.MoneyPolicy;
import paperbark.firm.OfferPolicy;
import paperbark.firm.PaidTo;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.value.Money;
import paperbark.value.State;

class OfferComparisonTest {
    private static final MoneyPolicy USUAL = MoneyPolicy.USUAL;

    @Test
    void offersAreRankedByWhatTheyLeaveTheFirm() {
        Comparison comparison =
                compare(
                        discount("500"),
                        USUAL,
                        14,
                        offer(KESTREL, "37.20"),
                        offer(WHIMBREL, "37.85"),
                        offer(PIPIT, "36.60"));

        assertThat(comparison.ranked())
                .extracting(q -> q.offer().buyer())
                .containsExactly(WHIMBREL, KESTREL, PIPIT);
        assertThat(comparison.runnerUp().orElseThrow().offer().buyer()).isEqualTo(KESTREL);
        // 529.90 - 29.90/11 against 520.80 - 20.80/11
        assertThat(comparison.difference()).contains(Money.of("8.27"));
        assertThat(comparison.costOfChoice()).isEqualTo(Money.ZERO);
        assertThat(comparison.how()).isEqualTo("highest net");
    }

    // 1,000 x 9 % x 73 of 365 days = 18.00
    @Test
    void waitingCostsTheFirmsRateForTheDaysToTheMoney() {
        Comparison comparison =
                compare(discount("1000"), costing("9"), 10, offer(PIPIT, "100", 73));

        Quote quote = comparison.chosen().orElseThrow();
        assertThat(quote.days()).isEqualTo(73);
        assertThat(quote.waiting()).isEqualTo(Money.of("18.00"));
        assertThat(quote.worth()).isEqualTo(Money.of("982.00"));
    }

    @ParameterizedTest
    @CsvSource({"0, Whimbrel Exchange", "20, Kestrel Certificates"})
    void aLaterPaymentMayBeWorthLess(String cost, String buyer) {
        Comparison comparison =
                compare(
                        discount("300"),
                        costing(cost),
                        10,
                        offer(WHIMBREL, "37.50", 60),
                        offer(KESTREL, "37.00", 7));

        assertThat(comparison.chosen().orElseThrow().offer().buyer()).isEqualTo(buyer);
    }

    @Test
    void waitingForABookedJobCountsFromToday() {
        Job booked =
                Register.job(
                        "Claim STCs,Visit date,STC benefit,Benefit form\nyes,03/12/2026,100,discount");

        Quote quote = compare(booked, USUAL, 10, offer(PIPIT, "37", 14)).chosen().orElseThrow();

        assertThat(quote.days()).isEqualTo(24);
        assertThat(quote.due()).isEqualTo("2026-12-17");
    }

    @Test
    void theQuickestIsTakenWhereTheFirmWantsItSo() {
        Comparison comparison =
                compare(
                        discount("300"),
                        policy(OfferPolicy.QUICKEST, "", "0", "0"),
                        10,
                        offer(WHIMBREL, "39.00", 28),
                        offer(PIPIT, "36.00", 7),
                        offer(KESTREL, "37.00", 7));

        assertThat(comparison.chosen().orElseThrow().offer().buyer()).isEqualTo(KESTREL);
        assertThat(comparison.runnerUp().orElseThrow().offer().buyer()).isEqualTo(PIPIT);
        assertThat(comparison.how()).isEqualTo("quickest");
        // 390 - 90/11 against 370 - 70/11
        assertThat(comparison.costOfChoice()).isEqualTo(Money.of("18.18"));
    }

    // Both leave GST of an eleventh beyond the discount, so 20.00 more is 18.18 more to the firm.
    @ParameterizedTest
    @CsvSource({
        "18.18, Whimbrel Exchange, better than the preferred buyer by $18.18 or more",
        "18.19, Kestrel Certificates, preferred buyer"
    })
    void thePreferredBuyerLosesOnlyToOneBetterByTheMargin(String margin, String buyer, String how) {
        Comparison comparison =
                compare(
                        discount("300"),
                        policy(OfferPolicy.PREFERRED, KESTREL, margin, "0"),
                        10,
                        offer(WHIMBREL, "39.00"),
                        offer(KESTREL, "37.00"));

        assertThat(comparison.chosen().orElseThrow().offer().buyer()).isEqualTo(buyer);
        assertThat(comparison.how()).isEqualTo(how);
    }

    @Test
    void withoutAnOfferOfThePreferredBuyerTheBestIsTaken() {
        Comparison comparison =
                compare(
                        discount("300"),
                        policy(OfferPolicy.PREFERRED, KESTREL, "50", "0"),
                        10,
                        offer(PIPIT, "36.00"),
                        offer(WHIMBREL, "39.00"));

        assertThat(comparison.chosen().orElseThrow().offer().buyer()).isEqualTo(WHIMBREL);
        assertThat(comparison.how()).isEqualTo("highest net; the preferred buyer has no offer");
    }

    @Test
    void aBuyerFixedInTheRegisterWinsAndTheCostOfThatIsKnown() {
        Job fixed =
                Register.job(
                        "Claim STCs,STC buyer,STC benefit,Benefit form\nyes,"
                                + KESTREL
                                + ",300,discount");

        Comparison comparison =
                compare(fixed, USUAL, 10, offer(WHIMBREL, "39.00"), offer(KESTREL, "37.00"));

        assertThat(comparison.chosen().orElseThrow().offer().buyer()).isEqualTo(KESTREL);
        assertThat(comparison.fixed()).isTrue();
        assertThat(comparison.how()).isEqualTo("fixed in the register");
        assertThat(comparison.costOfChoice()).isEqualTo(Money.of("18.18"));
        assertThat(comparison.difference()).contains(Money.of("-18.18"));
    }

    @Test
    void aFeeForEachCertificateIsKeptBackToo() {
        Quote quote =
                compare(
                                discount("300"),
                                USUAL,
                                13,
                                offer(PIPIT, "36.60", 14, Offers.feeEach("0.125")))
                        .chosen()
                        .orElseThrow();

        assertThat(quote.fee()).isEqualTo(Money.of("1.63"));
        assertThat(quote.paid()).isEqualTo(Money.of("474.17"));
    }

    @Test
    void everyOfferLeftOutSaysWhy() {
        Comparison comparison =
                compare(
                        discount("300"),
                        USUAL,
                        10,
                        offer(KESTREL, "40", 7, Offers.zones(1, 3)),
                        offer(WHIMBREL, "41", 7, Offers.states(State.SA, State.NSW)),
                        offer(PIPIT, "42", 7, Offers.paidTo(PaidTo.OWNER)),
                        offer("Nobody and Sons", "99"),
                        offer(PIPIT, "36", 7, Offers.zones(4)));

        assertThat(comparison.ranked()).hasSize(1);
        assertThat(comparison.leftOut())
                .extracting(LeftOut::inWords)
                .containsExactly(
                        KESTREL + ": takes only zone 1, 3",
                        WHIMBREL + ": takes only sites in NSW, SA",
                        PIPIT + ": pays the owner only, and the owner had a discount",
                        "Nobody and Sons: is not in the buyers table");
    }

    @Test
    void anOfferThatPaysTheFirmOnlyIsNotForAnOwnerWhoIsPaid() {
        Job job = Offers.job("300", "payment", "no", "no");
        OfferChoice.Chosen chosen =
                Offers.choose(
                        job,
                        Offers.tables(
                                USUAL, true, offer(PIPIT, "36", 7, Offers.paidTo(PaidTo.FIRM))),
                        10);

        assertThat(chosen.expected()).isEmpty();
        assertThat(chosen.findings())
                .singleElement()
                .matches(f -> f.code() == FindingCode.OFFER_NOT_MET)
                .matches(
                        f ->
                                f.fact()
                                        .equals(
                                                "The claim is for 10 STCs; Pipit and Wren pays the firm only, and the owner is to be paid."));
    }

    @Test
    void theWorkingCanBeRedoneByHand() {
        Comparison comparison =
                compare(
                        discount("300"),
                        costing("9.5"),
                        10,
                        offer(WHIMBREL, "39.00", 21, Offers.feeEach("0.05")),
                        offer(KESTREL, "37.00"),
                        offer(PIPIT, "99", 7, Offers.zones(1)));

        assertThat(comparison.steps())
                .extracting(Step::label, Step::working, Step::result)
                .containsExactly(
                        tuple(
                                WHIMBREL,
                                "10 x $39.00 = $390.00 - $0.50 fee - $8.14 GST on what exceeds the discount - $2.13 for waiting = $379.23 to the firm",
                                "$379.23 in 21 days"),
                        tuple(
                                KESTREL,
                                "10 x $37.00 = $370.00 - $6.36 GST on what exceeds the discount - $1.35 for waiting = $362.29 to the firm",
                                "$362.29 in 14 days"),
                        tuple(PIPIT, "takes only zone 1", "left out"),
                        tuple(
                                "Offer taken",
                                "highest net; next " + KESTREL + ", difference $16.94",
                                WHIMBREL));
    }
}
