package paperbark.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.offer.Offers.PIPIT;
import static paperbark.offer.Offers.discount;
import static paperbark.offer.Offers.job;
import static paperbark.offer.Offers.offer;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.firm.GstBasis;
import paperbark.firm.MoneyPolicy;
import paperbark.firm.Offer;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.value.Money;

class SplitTest {

    @Test
    void afterADiscountTheBuyersMoneyIsTheFirms() {
        Split split = split(discount("300"), offer(PIPIT, "37"));

        assertThat(split.toFirm()).isEqualTo(Money.of("370.00"));
        assertThat(split.toOwner()).isEqualTo(Money.ZERO);
        assertThat(split.netToOwner()).isEqualTo(Money.of("300.00"));
    }

    @Test
    void anOwnerWhoIsPaidGetsWhatWasPromisedAndTheFirmTheRest() {
        Split split = split(job("300", "payment", "no", "no"), offer(PIPIT, "37"));

        assertThat(split.toOwner()).isEqualTo(Money.of("300.00"));
        assertThat(split.toFirm()).isEqualTo(Money.of("70.00"));
        assertThat(split.firmGst()).isEqualTo(Money.of("6.36"));
        assertThat(split.netToFirm()).isEqualTo(Money.of("63.64"));
    }

    @Test
    void withoutAPromiseThePaymentIsAllTheOwners() {
        Split split = split(job("", "payment", "no", "no"), offer(PIPIT, "37"));

        assertThat(split.toOwner()).isEqualTo(Money.of("370.00"));
        assertThat(split.toFirm()).isEqualTo(Money.ZERO);
        assertThat(split.firmGst()).isEqualTo(Money.ZERO);
    }

    @Test
    void aPromiseAboveTheOfferIsTheFirmsToMakeGood() {
        Split split = split(job("400", "payment", "no", "no"), offer(PIPIT, "37"));

        assertThat(split.toOwner()).isEqualTo(Money.of("400.00"));
        assertThat(split.toFirm()).isEqualTo(Money.of("-30.00"));
        assertThat(split.firmGst()).isEqualTo(Money.ZERO);
    }

    // Source: trade rules as read from ATO QC 24820, own example (ii): the extra $60 is taxable.
    @Test
    void whatTheBuyerPaysBeyondTheDiscountIsTaxable() {
        Split split = split(discount("800"), offer(PIPIT, "86"));

        assertThat(split.beyond()).isEqualTo(Money.of("60.00"));
        assertThat(split.firmGst()).isEqualTo(Money.of("5.45"));
    }

    @Test
    void aBuyerWhoPaysLessThanTheDiscountLowersNoGst() {
        Split split = split(discount("800"), offer(PIPIT, "70"));

        assertThat(split.beyond()).isEqualTo(Money.of("-100.00"));
        assertThat(split.firmGst()).isEqualTo(Money.ZERO);
        assertThat(split.netToFirm()).isEqualTo(Money.of("700.00"));
    }

    @Test
    void aFirmThatIsNotRegisteredOwesNone() {
        Split split =
                Offers.choose(
                                discount("800"),
                                Offers.tables(MoneyPolicy.USUAL, false, offer(PIPIT, "86")),
                                10)
                        .expected()
                        .orElseThrow()
                        .split();

        assertThat(split.firmGst()).isEqualTo(Money.ZERO);
    }

    @Test
    void whereTheRegisterDoesNotTellWhatTheOwnerHadNothingIsSaidOfGst() {
        Job silent = Register.job("Claim STCs\nyes");

        assertThat(split(silent, offer(PIPIT, "37")).firmGst()).isEqualTo(Money.ZERO);
    }

    @Test
    void toAnOwnerInBusinessAPricePlusGstIsPaidWithATenthOnTop() {
        Job business = job("1100", "payment", "yes", "yes");
        Quote plus = quote(business, offer(PIPIT, "100", 14, Offers.basis(GstBasis.PLUS)));
        Quote included = quote(business, offer(PIPIT, "110", 14, Offers.basis(GstBasis.INCLUDED)));

        assertThat(plus.gst()).isEqualTo(Money.of("100.00"));
        assertThat(plus.paid()).isEqualTo(Money.of("1000.00"));
        assertThat(included.gst()).isEqualTo(Money.ZERO);
        assertThat(included.paid()).isEqualTo(Money.of("1100.00"));
        assertThat(plus.split().ownerGst()).isEqualTo(Money.of("100.00"));
        assertThat(plus.split().netToOwner()).isEqualTo(Money.of("1000.00"));
    }

    // 1,100 paid to the owner holds 100 of GST, which the tenth on top pays; 1,000 holds 90.91, so
    // that 90.91 of the price stays and 9.09 of the tenth is nobody's.
    @ParameterizedTest
    @CsvSource({"1100, 100.00, 0.00", "1000, 90.91, 90.91", "'', 100.00, 0.00"})
    void anOwnerWhoIsPaidHasTheirGstOutOfTheTenthOnTop(
            String promised, String ofTop, String toFirm) {
        Split split = split(job(promised, "payment", "yes", "yes"), offer(PIPIT, "100"));

        assertThat(split.ofTop()).isEqualTo(Money.of(ofTop));
        assertThat(split.toFirm()).isEqualTo(Money.of(toFirm));
    }

    // "Book it to nobody": nothing was found on who keeps the tenth where the owner took a
    // discount.
    @Test
    void afterADiscountTheTenthOnTopIsNeitherIncomeNorWorthAnythingInTheRanking() {
        Job business = job("1000", "discount", "yes", "yes");
        Quote plus = quote(business, offer(PIPIT, "100", 14, Offers.basis(GstBasis.PLUS)));
        Quote included = quote(business, offer(PIPIT, "100", 14, Offers.basis(GstBasis.INCLUDED)));

        assertThat(plus.gst()).isEqualTo(Money.of("100.00"));
        assertThat(plus.split().ofTop()).isEqualTo(Money.ZERO);
        assertThat(plus.split().toFirm()).isEqualTo(Money.of("1000.00"));
        assertThat(plus.split().firmGst()).isEqualTo(Money.ZERO);
        assertThat(plus.worth()).isEqualTo(included.worth());
    }

    @Test
    void atHomeAnOwnerOwesNoneEvenIfRegistered() {
        Job home = job("1100", "payment", "yes", "no");

        assertThat(quote(home, offer(PIPIT, "100")).gst()).isEqualTo(Money.ZERO);
        assertThat(split(home, offer(PIPIT, "100")).ownerGst()).isEqualTo(Money.ZERO);
    }

    private static Split split(Job job, Offer offer) {
        return quote(job, offer).split();
    }

    private static Quote quote(Job job, Offer offer) {
        return Offers.compare(job, MoneyPolicy.USUAL, 10, offer).chosen().orElseThrow();
    }
}
