package paperbark.offer;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.firm.Firm;
import paperbark.firm.MoneyPolicy;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.value.Money;

class GstTest {

    // Source: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820): $700 on a $7,700
    // system, $400 on a $4,400 one;
    // ATO edited advice 1052028683343: everything received counts, so (4,700 + 860) / 11.
    @ParameterizedTest
    @CsvSource({
        "7700.00, 700.00",
        "4400.00, 400.00",
        "5560.00, 505.45",
        "12.37, 1.12",
        "0.00, 0.00"
    })
    void anEleventhOfTheFullPriceIsGst(String price, String gst) {
        assertThat(Gst.includedIn(Money.of(price), 11)).isEqualTo(Money.of(gst));
    }

    @Property
    void elevenTimesTheGstIsThePriceWithinHalfACentEach(
            @ForAll @LongRange(min = 0, max = 100_000_000) long cents) {
        Money price = new Money(BigDecimal.valueOf(cents, 2));
        BigDecimal eleven = Gst.includedIn(price, 11).amount().multiply(BigDecimal.valueOf(11));
        BigDecimal difference = eleven.subtract(price.amount()).abs();
        assertThat(difference).isLessThanOrEqualTo(new BigDecimal("0.055"));
    }

    // Source: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820): $1,000 of STCs taken
    // off a $7,700 system leave $6,700 payable with $700 of GST.
    @Test
    void certificatesTakenOffLowerWhatIsPayableAndNeverTheGst() {
        OwnerPrice price = price("yes,1000,,,7700,discount", firm(true));

        assertThat(price.assigned()).isEqualTo(Money.of("1000.00"));
        assertThat(price.payable()).isEqualTo(Money.of("6700.00"));
        assertThat(price.gst()).isEqualTo(Money.of("700.00"));
    }

    @Test
    void theDiscountsOfBothSchemesAreTakenOff() {
        OwnerPrice price = price("yes,504,yes,462,4620,discount", firm(true));

        assertThat(price.assigned()).isEqualTo(Money.of("966.00"));
        assertThat(price.payable()).isEqualTo(Money.of("3654.00"));
        assertThat(price.gst()).isEqualTo(Money.of("420.00"));
    }

    @Test
    void aBenefitThatIsNotClaimedIsNotTakenOff() {
        assertThat(price("yes,504,no,462,4620,discount", firm(true)).payable())
                .isEqualTo(Money.of("4116.00"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"payment to the owner", "other", ""})
    void certificatesPaidOutToTheOwnerDoNotLowerWhatIsPayable(String form) {
        OwnerPrice price = price("yes,504,yes,462,4620," + form, firm(true));

        assertThat(price.assigned()).isEqualTo(Money.ZERO);
        assertThat(price.payable()).isEqualTo(Money.of("4620.00"));
        assertThat(price.gst()).isEqualTo(Money.of("420.00"));
    }

    @Test
    void aFirmThatIsNotRegisteredShowsNoGst() {
        OwnerPrice price = price("yes,1000,,,7700,discount", firm(false));

        assertThat(price.gst()).isEqualTo(Money.ZERO);
        assertThat(price.payable()).isEqualTo(Money.of("6700.00"));
    }

    @Test
    void withoutAFullPriceNothingIsWorkedOut() {
        assertThat(prices("yes,1000,,,,discount", firm(true))).isEmpty();
    }

    private static OwnerPrice price(String cells, Firm firm) {
        return prices(cells, firm).orElseThrow();
    }

    private static Optional<OwnerPrice> prices(String cells, Firm firm) {
        Job job =
                Register.job(
                        "Claim STCs,STC benefit,Claim VEECs,VEEC benefit,Full price,Benefit form\n"
                                + cells);
        return Gst.of(job, firm, Register.RULES, Register.TODAY);
    }

    private static Firm firm(boolean gstRegistered) {
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
                MoneyPolicy.USUAL);
    }
}
