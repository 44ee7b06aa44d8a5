package paperbark.offer;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.entitlement.Entitlements;
import paperbark.firm.FirmTables;
import paperbark.firm.GstBasis;
import paperbark.firm.GstRounding;
import paperbark.firm.MoneyPolicy;
import paperbark.job.Job;
import paperbark.job.Register;
import paperbark.value.Money;

/** The two ways of rounding the GST of an invoice, and the tax office's examples, to the cent. */
class GstRoundingTest {
    private static final MoneyPolicy USUAL = MoneyPolicy.USUAL;

    // Rule: GST Act s 9-90. Three lines at $12.37 hold 1.124545... each: 3.3736 is rounded once to
    // 3.37, or each to 1.12 and added to 3.36.
    @ParameterizedTest
    @CsvSource({"TOTAL_INVOICE, 3.37", "TAXABLE_SUPPLY, 3.36"})
    void severalSuppliesAreRoundedOnceOrEach(GstRounding method, String gst) {
        List<GstLine> lines = Collections.nCopies(3, GstLine.price(Money.of("12.37")));

        assertThat(Gst.onInvoice(lines, 11, method)).isEqualTo(Money.of(gst));
    }

    // Rule: GST Act s 9-90, half a cent goes up. 10 % of 1.05 is 0.105; of 1.15 it is 0.115, which
    // binary fractions would round down.
    @ParameterizedTest
    @CsvSource({"1.05, 0.11", "1.15, 0.12", "1.04, 0.10", "0.05, 0.01", "0.04, 0.00"})
    void halfACentGoesUpUnderBothRules(String value, String gst) {
        List<GstLine> line = List.of(GstLine.value(Money.of(value)));

        for (GstRounding method : GstRounding.values()) {
            assertThat(Gst.onInvoice(line, 11, method)).isEqualTo(Money.of(gst));
        }
    }

    @Test
    void pricesAndValuesMayStandOnOneInvoice() {
        List<GstLine> lines =
                List.of(GstLine.price(Money.of("12.37")), GstLine.value(Money.of("1.05")));

        // 1.124545... + 0.105 = 1.229545...; each rounded: 1.12 + 0.11
        assertThat(Gst.onInvoice(lines, 11, GstRounding.TOTAL_INVOICE)).isEqualTo(Money.of("1.23"));
        assertThat(Gst.onInvoice(lines, 11, GstRounding.TAXABLE_SUPPLY))
                .isEqualTo(Money.of("1.23"));
    }

    @Property
    void theRulesDifferByLessThanACentForTwoSupplies(
            @ForAll @Size(value = 2) List<@LongRange(min = 0, max = 10_000_000) Long> cents) {
        List<GstLine> lines =
                cents.stream()
                        .map(c -> GstLine.price(new Money(BigDecimal.valueOf(c, 2))))
                        .toList();
        Money once = Gst.onInvoice(lines, 11, GstRounding.TOTAL_INVOICE);
        Money each = Gst.onInvoice(lines, 11, GstRounding.TAXABLE_SUPPLY);

        assertThat(once.minus(each).amount().abs()).isLessThanOrEqualTo(new BigDecimal("0.01"));
    }

    // Source: ATO QC 24820, Bill and Maree: $7,700 with $1,000 of STCs assigned, $6,700 payable,
    // GST $700 and not $609.09.
    @Test
    void billAndMaree() {
        FirmGst gst = gst("1000,7700,discount,no,no", USUAL, "100");

        assertThat(gst.onPrice()).isEqualTo(Money.of("700.00"));
        assertThat(gst.ownerGst()).isEqualTo(Money.ZERO);
        assertThat(gst.credit()).isEqualTo(Money.ZERO);
    }

    // Source: ATO QC 24820, Peter and Jane: $4,400 less $600, $3,800 paid; the agent takes the
    // STCs. GST is an eleventh of $4,400.
    @Test
    void peterAndJane() {
        FirmGst gst = gst("600,4400,discount,no,no", USUAL, "60");

        assertThat(gst.onPrice()).isEqualTo(Money.of("400.00"));
        assertThat(gst.owed()).isEqualTo(Money.of("400.00"));
    }

    // Source: edited private advice 1013003639462: owners do not assign the rights to the firm, nor
    // does the firm supply them to the trading house; so owner's invoice and credit are the
    // buyer's.
    @ParameterizedTest
    @CsvSource({"discount", "payment"})
    void theCreditOfAnOwnerInBusinessIsTheBuyersAndNotTheFirms(String form) {
        FirmGst gst = gst("1100,7700," + form + ",yes,yes", USUAL, "110");

        assertThat(gst.onPrice()).isEqualTo(Money.of("700.00"));
        assertThat(gst.ownerGst()).isEqualTo(Money.of("100.00"));
        assertThat(gst.credit()).isEqualTo(Money.ZERO);
    }

    // Our own example of the rule in QC 24820, whose agent "can be the installer": $7,700, assigned
    // to the firm for $1,100 with GST: GST 700, the owner's invoice 100, the firm's credit 100.
    @Test
    void whereTheFirmItselfIsTheBuyerTheCreditIsItsOwn() {
        FirmGst gst = gst("1100,7700,discount,yes,yes", USUAL, "110", Offers::ownPipit);

        assertThat(gst.onPrice()).isEqualTo(Money.of("700.00"));
        assertThat(gst.ownerGst()).isEqualTo(Money.of("100.00"));
        assertThat(gst.credit()).isEqualTo(Money.of("100.00"));
        assertThat(price("1100,7700,discount,yes,yes").payable()).isEqualTo(Money.of("6600.00"));
    }

    // What the firm gets for certificates that it took itself is a sale of its own, not part of the
    // payment for the heater.
    @Test
    void whatTheFirmMakesOfItsOwnCertificatesIsNotBeyondTheDiscount() {
        FirmGst gst = gst("800,5500,discount,no,no", USUAL, "86", Offers::ownPipit);

        assertThat(gst.beyond()).isEqualTo(Money.ZERO);
        assertThat(gst.owed()).isEqualTo(Money.of("500.00"));
    }

    // Source: edited private advice 1052028683343: an eleventh of the customer's $4,700 and the
    // agent's $860 is $505.45, where $5,500 was quoted with a discount of $800.
    @ParameterizedTest
    @CsvSource({"TOTAL_INVOICE, 505.45", "TAXABLE_SUPPLY, 505.45"})
    void anAgentWhoPaysMoreThanTheDiscountRaisesTheGst(GstRounding method, String owed) {
        FirmGst gst = gst("800,5500,discount,no,no", rounding(method), "86");

        assertThat(gst.onPrice()).isEqualTo(Money.of("500.00"));
        assertThat(gst.beyond()).isEqualTo(Money.of("60.00"));
        assertThat(gst.owed()).isEqualTo(Money.of(owed));
    }

    // 5,500.05 holds 500.00454..., 60.00 holds 5.45454...: together 505.45909..., each rounded
    // 500.00 + 5.45.
    @ParameterizedTest
    @CsvSource({"TOTAL_INVOICE, 505.46", "TAXABLE_SUPPLY, 505.45"})
    void theFirmsRuleDecidesWhereTheyDiffer(GstRounding method, String owed) {
        assertThat(gst("800,5500.05,discount,no,no", rounding(method), "86").owed())
                .isEqualTo(Money.of(owed));
    }

    @Test
    void aBuyerWhoPaysLessThanTheDiscountLowersNothing() {
        FirmGst gst = gst("800,5500,discount,no,no", USUAL, "70");

        assertThat(gst.owed()).isEqualTo(Money.of("500.00"));
        // The other reading, for comparison: (4,700 + 700) / 11.
        assertThat(gst.byPayments()).isEqualTo(Money.of("490.91"));
    }

    private static MoneyPolicy rounding(GstRounding method) {
        return new MoneyPolicy(
                USUAL.choice(),
                USUAL.preferredBuyer(),
                USUAL.preferredMargin(),
                USUAL.costOfMoney(),
                method,
                USUAL.lowerCount());
    }

    /** Ten STCs at a price that holds any GST. */
    private static FirmGst gst(String cells, MoneyPolicy policy, String price) {
        return gst(cells, policy, price, t -> t);
    }

    private static FirmGst gst(
            String cells, MoneyPolicy policy, String price, UnaryOperator<FirmTables> change) {
        Job job = job(cells);
        FirmTables tables =
                change.apply(
                        Offers.tables(
                                policy,
                                true,
                                Offers.offer(
                                        Offers.PIPIT, price, 14, Offers.basis(GstBasis.INCLUDED))));
        Expected expected = Offers.choose(job, tables, 10).expected().orElseThrow();
        OwnerPrice asked = price(cells);
        List<Benefit> benefits =
                Benefit.of(job, new Entitlements(List.of()), List.of(expected), Optional.of(asked));
        return FirmGst.of(asked, benefits, List.of(expected), tables.firm());
    }

    private static OwnerPrice price(String cells) {
        return Gst.of(job(cells), Offers.firm(USUAL, true), Register.RULES, Register.TODAY)
                .orElseThrow();
    }

    private static Job job(String cells) {
        return Register.job(
                "Claim STCs,STC benefit,Full price,Benefit form,Owner registered for GST,Business premises\nyes,"
                        + cells);
    }
}
