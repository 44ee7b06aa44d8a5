package paperbark.offer;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.entitlement.Entitlement;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.FirmTables;
import paperbark.firm.Offer;
import paperbark.firm.OfferTerms;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.value.DateRange;
import paperbark.value.ExactMoney;
import paperbark.value.Money;
import paperbark.value.SchemeName;

class OfferChoiceTest {
    private static final String KESTREL = "Kestrel Certificates";
    private static final String PIPIT = "Pipit and Wren";
    private static final String WHIMBREL = "Whimbrel Exchange";

    /** The day of the run; the offers here are for STCs and in force on it unless said. */
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 23);

    @Test
    void theOfferThatBringsMostIsTaken() {
        Expected taken =
                expected(
                        choose(
                                14,
                                offer(KESTREL, "37.20"),
                                offer(WHIMBREL, "37.85"),
                                offer(PIPIT, "36.60")));

        assertThat(taken.buyer().name()).isEqualTo(WHIMBREL);
        assertThat(taken.certificates()).isEqualTo(14);
        assertThat(taken.gross()).isEqualTo(Money.of("529.90"));
        assertThat(taken.fee()).isEqualTo(Money.ZERO);
        assertThat(taken.net()).isEqualTo(Money.of("529.90"));
    }

    // 25 x 0.60 pays for the fee of 15.00 exactly: below, the offer without a fee brings more.
    @ParameterizedTest
    @CsvSource({"24, Pipit and Wren, 878.40", "26, Kestrel Certificates, 952.20"})
    void theFeeOfAClaimCounts(int certificates, String buyer, String net) {
        Expected taken =
                expected(
                        choose(
                                certificates,
                                withFee(offer(KESTREL, "37.20"), "15.00"),
                                offer(PIPIT, "36.60")));

        assertThat(taken.buyer().name()).isEqualTo(buyer);
        assertThat(taken.net()).isEqualTo(Money.of(net));
    }

    @Test
    void ofOffersThatBringTheSameTheOneThatPaysSoonerIsTaken() {
        Offer late = withPaymentDays(withFee(offer(KESTREL, "37.20"), "15.00"), 21);
        Offer soon = withPaymentDays(offer(PIPIT, "36.60"), 7);

        assertThat(expected(choose(25, late, soon)).buyer().name()).isEqualTo(PIPIT);
        assertThat(expected(choose(25, soon, late)).buyer().name()).isEqualTo(PIPIT);
    }

    @Test
    void ofOffersThatBringTheSameAndPayTheSameDayTheFirstByNameIsTaken() {
        assertThat(
                        expected(choose(25, offer(PIPIT, "36.60"), offer(KESTREL, "36.60")))
                                .buyer()
                                .name())
                .isEqualTo(KESTREL);
    }

    @Test
    void theBestOfferIsPassedOverWhereItsBuyerIsNotInTheTables() {
        assertThat(
                        expected(
                                        choose(
                                                25,
                                                offer("Nobody and Sons", "99.00"),
                                                offer(PIPIT, "36.60")))
                                .buyer()
                                .name())
                .isEqualTo(PIPIT);
    }

    @Test
    void theBuyerFixedInTheRegisterIsTakenWhateverOthersPay() {
        Chosen chosen =
                choose(claim(KESTREL), 14, offer(WHIMBREL, "37.85"), offer(KESTREL, "30.00"));

        assertThat(expected(chosen).buyer().name()).isEqualTo(KESTREL);
        assertThat(expected(chosen).runnerUp().orElseThrow().buyer()).isEqualTo(WHIMBREL);
        assertThat(expected(chosen).runnerUpNet()).contains(Money.of("529.90"));
    }

    @ParameterizedTest
    @CsvSource({
        "14, Pipit and Wren",
        "15, Whimbrel Exchange",
        "20, Whimbrel Exchange",
        "21, Pipit and Wren"
    })
    void anOfferIsForClaimsFromItsMinimumToItsMaximum(int certificates, String buyer) {
        Chosen chosen =
                choose(
                        certificates,
                        withLimits(offer(WHIMBREL, "40.00"), 15, 20),
                        offer(PIPIT, "36.60"));

        assertThat(expected(chosen).buyer().name()).isEqualTo(buyer);
    }

    @Test
    void aFixedBuyerWhoDoesNotTakeTheClaimIsNotReplacedByAnother() {
        Chosen chosen =
                choose(
                        claim(WHIMBREL),
                        14,
                        withLimits(offer(WHIMBREL, "40.00"), 15, 20),
                        offer(PIPIT, "36.60"));

        assertThat(chosen.result().expected()).isEmpty();
        Finding finding = only(chosen);
        assertThat(finding.code()).isEqualTo(FindingCode.OFFER_NOT_MET);
        assertThat(finding.fact())
                .isEqualTo(
                        "The claim is for 14 STCs; in one claim Whimbrel Exchange takes at least 15 and at most 20.");
        assertThat(finding.place())
                .isEqualTo(chosen.job().origin().cell(Field.of(SchemeName.STC, ClaimFact.BUYER)));
        assertThat(finding.job()).contains("T-1");
    }

    @ParameterizedTest
    @CsvSource({
        "2026-11-24, 2026-12-31",
        "2026-10-01, 2026-11-22",
    })
    void anOfferCannotBeTakenBeforeOrAfterItsDays(LocalDate from, LocalDate to) {
        Chosen chosen = choose(14, inForce(offer(PIPIT, "36.60"), from, to));

        assertThat(chosen.result().expected()).isEmpty();
        assertThat(only(chosen).code()).isEqualTo(FindingCode.OFFER_MISSING);
        assertThat(only(chosen).fact())
                .isEqualTo("There is no offer for STCs in force on 23 Nov 2026.");
    }

    @Test
    void anOfferCanBeTakenOnItsFirstAndItsLastDay() {
        Chosen chosen = choose(14, inForce(offer(PIPIT, "36.60"), TODAY, TODAY));

        assertThat(expected(chosen).buyer().name()).isEqualTo(PIPIT);
        assertThat(chosen.result().findings()).isEmpty();
    }

    @Test
    void anOfferForTheOtherSchemeIsNone() {
        Offer veec =
                new Offer(
                        PIPIT,
                        SchemeName.VEEC,
                        DateRange.ALWAYS,
                        new ExactMoney(new BigDecimal("67.25")),
                        Money.ZERO,
                        Optional.empty(),
                        Optional.empty(),
                        14,
                        OfferTerms.PLAIN,
                        2);

        assertThat(only(choose(claim(PIPIT), 14, veec)).fact())
                .isEqualTo("Pipit and Wren has no offer for STCs in force on 23 Nov 2026.");
    }

    @Test
    void theRunnerUpIsTheBestOfAnotherBuyer() {
        Chosen chosen =
                choose(
                        14,
                        offer(KESTREL, "38.00"),
                        withLimits(offer(KESTREL, "37.90"), 1, 99),
                        offer(PIPIT, "36.00"),
                        offer(WHIMBREL, "37.00"));

        assertThat(expected(chosen).offer().pricePerCertificate().amount())
                .isEqualByComparingTo("38.00");
        assertThat(expected(chosen).runnerUp().orElseThrow().buyer()).isEqualTo(WHIMBREL);
        assertThat(expected(chosen).runnerUpNet()).contains(Money.of("518.00"));
    }

    @Test
    void oneBuyerAloneHasNoRunnerUp() {
        Expected taken = expected(choose(14, offer(KESTREL, "38.00"), offer(KESTREL, "37.00")));

        assertThat(taken.runnerUp()).isEmpty();
        assertThat(taken.runnerUpNet()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "Installed on, 20/11/2026, 2026-12-07",
        "Installed on, 23/11/2026, 2026-12-07",
        "Visit date, 24/11/2026, 2026-12-08"
    })
    void paymentIsDueFromTheLaterOfTheRunAndTheInstallation(
            String column, String day, LocalDate due) {
        Job job = Register.job("Claim STCs," + column + "\nyes," + day);

        assertThat(expected(choose(job, 14, withPaymentDays(offer(PIPIT, "36.60"), 14))).due())
                .isEqualTo(due);
    }

    @Test
    void aPriceWithPartsOfACentIsRoundedForTheWholeClaim() {
        assertThat(expected(choose(3, offer(PIPIT, "37.255"))).gross())
                .isEqualTo(Money.of("111.77"));
    }

    @Test
    void withoutCertificatesNoMoneyIsExpectedAndNothingIsSaid() {
        for (int none : new int[] {0, -1}) {
            Chosen chosen = choose(none, offer(PIPIT, "36.60"));
            assertThat(chosen.result().expected()).isEmpty();
            assertThat(chosen.result().findings()).isEmpty();
        }
    }

    @Test
    void aBuyerThatCouldNotBeReadIsNotReplacedByTheBest() {
        Chosen chosen = choose(claim("Kestral"), 14, offer(PIPIT, "36.60"));

        assertThat(chosen.result().expected()).isEmpty();
        assertThat(chosen.result().findings()).isEmpty();
    }

    private record Chosen(Job job, OfferChoice.Chosen result) {}

    private static Chosen choose(int certificates, Offer... offers) {
        return choose(Register.job("Claim STCs\nyes"), certificates, offers);
    }

    /** A count below zero stands for one that could not be worked out. */
    private static Chosen choose(Job job, int certificates, Offer... offers) {
        Entitlement entitlement =
                new Entitlement(
                        SchemeName.STC,
                        Optional.of(certificates).filter(c -> c >= 0),
                        Optional.of(4),
                        Optional.empty(),
                        Optional.empty(),
                        false,
                        List.of());
        return new Chosen(
                job,
                new OfferChoice(tables(offers), Register.RULES, TODAY).choose(job, entitlement));
    }

    private static Job claim(String buyer) {
        return Register.job("Claim STCs,STC buyer\nyes," + buyer);
    }

    private static Expected expected(Chosen chosen) {
        return chosen.result().expected().orElseThrow();
    }

    private static Finding only(Chosen chosen) {
        assertThat(chosen.result().findings()).hasSize(1);
        return chosen.result().findings().get(0);
    }

    private static FirmTables tables(Offer... offers) {
        FirmTables t = Register.TABLES;
        return new FirmTables(
                t.firm(),
                t.people(),
                t.makers(),
                t.products(),
                t.sellers(),
                t.buyers(),
                Arrays.asList(offers),
                t.statePapers(),
                t.words(),
                t.accounts());
    }

    private static Offer offer(String buyer, String price) {
        return new Offer(
                buyer,
                SchemeName.STC,
                DateRange.ALWAYS,
                new ExactMoney(new BigDecimal(price)),
                Money.ZERO,
                Optional.empty(),
                Optional.empty(),
                14,
                OfferTerms.PLAIN,
                2);
    }

    private static Offer withFee(Offer o, String fee) {
        return new Offer(
                o.buyer(),
                o.scheme(),
                o.inForce(),
                o.pricePerCertificate(),
                Money.of(fee),
                o.minimum(),
                o.maximum(),
                o.paymentDays(),
                OfferTerms.PLAIN,
                o.row());
    }

    private static Offer withLimits(Offer o, int minimum, int maximum) {
        return new Offer(
                o.buyer(),
                o.scheme(),
                o.inForce(),
                o.pricePerCertificate(),
                o.feePerClaim(),
                Optional.of(minimum),
                Optional.of(maximum),
                o.paymentDays(),
                OfferTerms.PLAIN,
                o.row());
    }

    private static Offer withPaymentDays(Offer o, int days) {
        return new Offer(
                o.buyer(),
                o.scheme(),
                o.inForce(),
                o.pricePerCertificate(),
                o.feePerClaim(),
                o.minimum(),
                o.maximum(),
                days,
                OfferTerms.PLAIN,
                o.row());
    }

    private static Offer inForce(Offer o, LocalDate from, LocalDate to) {
        return new Offer(
                o.buyer(),
                o.scheme(),
                new DateRange(Optional.of(from), Optional.of(to)),
                o.pricePerCertificate(),
                o.feePerClaim(),
                o.minimum(),
                o.maximum(),
                o.paymentDays(),
                OfferTerms.PLAIN,
                o.row());
    }
}
