package paperbark.offer;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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
        BigDecimal difference = Gst.includedIn(price, 11).times(11).minus(price).amount().abs();
        assertThat(difference).isLessThanOrEqualTo(new BigDecimal("0.055"));
    }
}
