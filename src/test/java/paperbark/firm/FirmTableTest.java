package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.sheet.Reading;
import paperbark.value.Money;

class FirmTableTest {

    private static Reading<FirmTables> reading(String rows) {
        return TableTexts.smallest().with("firm", "fact,value\n" + rows).read();
    }

    @Test
    void everyFactIsRead() {
        Reading<FirmTables> reading =
                reading(
                        """
                        name,Gum Tree Trading Pty Ltd
                        abn,53 004 085 616
                        acn,004 085 616
                        GST registered,yes
                        street,1 Samphire Lane
                        suburb,Ballan
                        state,VIC
                        postcode,3342
                        phone,03 5550 0100
                        after_hours,0491 570 006
                        email,office@example.com
                        workmanship years,6
                        account name,Gum Tree Trading
                        bsb,000-000
                        account,0000 1234
                        """);
        assertThat(reading.findings()).isEmpty();
        Firm firm = reading.result().orElseThrow().firm();
        assertThat(firm.gstRegistered()).isTrue();
        assertThat(firm.acn()).isPresent();
        assertThat(firm.address()).hasToString("1 Samphire Lane, Ballan VIC 3342");
        assertThat(firm.workmanshipYears()).contains(6);
        assertThat(firm.bsb().orElseThrow().full()).isEqualTo("000-000");
        assertThat(firm.account().orElseThrow().full()).isEqualTo("00001234");
    }

    @Test
    void aFirmWithoutAbnRefusesAllTables() {
        Reading<FirmTables> reading = reading("name,Saltmarsh\n");
        assertThat(reading.result()).isEmpty();
        assertThat(reading.findings()).singleElement().matches(Finding::stops);
    }

    @Test
    void anAbnWithAWrongDigitIsShownBesideTheStop() {
        Reading<FirmTables> reading = reading("name,Saltmarsh\nabn,99 000 000 001\n");
        assertThat(reading.result()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.where() + " " + f.seen())
                .contains("firm.csv > B3 \"value\" 99 000 000 001");
    }

    @Test
    void aWrongBankDetailIsNotShown() {
        Reading<FirmTables> reading =
                reading("name,Saltmarsh\nabn,99 000 000 000\nbsb,00-0000-7\n");
        assertThat(reading.result().orElseThrow().firm().bsb()).isEmpty();
        assertThat(reading.findings())
                .singleElement()
                .satisfies(f -> assertThat(f.seen()).isEmpty())
                .satisfies(f -> assertThat(f.code()).isEqualTo(FindingCode.TABLE_ROW_WRONG));
    }

    @Test
    void aMisspeltOrRepeatedFactIsNamed() {
        Reading<FirmTables> reading =
                reading("name,Saltmarsh\nabn,99 000 000 000\nphne,1\nName,Other\n");
        assertThat(reading.result().orElseThrow().firm().name()).isEqualTo("Saltmarsh");
        assertThat(reading.findings())
                .extracting(Finding::where)
                .containsExactly("firm.csv > A4 \"fact\"", "firm.csv > row 5");
    }

    @Test
    void anAcnThatIsNotPartOfTheAbnIsLeftOut() {
        Reading<FirmTables> reading =
                reading("name,Saltmarsh\nabn,99 000 000 000\nacn,000 000 019\n");
        assertThat(reading.result().orElseThrow().firm().acn()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.code().code(), Finding::fact)
                .containsExactly(
                        tuple(
                                "acn-wrong",
                                "A company's ABN ends with its ACN, and this one does not."));
    }

    @Test
    void anAcnWithAWrongCheckDigitIsLeftOut() {
        Reading<FirmTables> reading =
                reading("name,Saltmarsh\nabn,99 000 000 000\nacn,000 000 018\n");
        assertThat(reading.result().orElseThrow().firm().acn()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.code().code(), Finding::where)
                .containsExactly(tuple("acn-wrong", "firm.csv > B4 \"value\""));
    }

    private static final String NAMED = "name,Saltmarsh\nabn,99 000 000 000\n";

    @Test
    void howMoneyIsWorkedOutIsRead() {
        Reading<FirmTables> reading =
                reading(
                        NAMED
                                + """
                                offer policy,Preferred buyer
                                preferred buyer,kestrel certificates
                                preferred unless beaten by,$25
                                cost of money,9.5 %
                                GST rounding,taxable supply
                                """);
        assertThat(reading.findings()).isEmpty();
        MoneyPolicy money = reading.result().orElseThrow().firm().money();
        assertThat(money.choice()).isEqualTo(OfferPolicy.PREFERRED);
        assertThat(money.preferredBuyer()).contains("kestrel certificates");
        assertThat(money.preferredMargin()).isEqualTo(Money.of("25"));
        assertThat(money.costOfMoney()).isEqualByComparingTo("9.5");
        assertThat(money.gstRounding()).isEqualTo(GstRounding.TAXABLE_SUPPLY);
    }

    @Test
    void withoutAWordOfItMoneyIsWorkedOutAsUsual() {
        assertThat(reading(NAMED).result().orElseThrow().firm().money())
                .isEqualTo(MoneyPolicy.USUAL);
    }

    @ParameterizedTest
    @CsvSource({
        "offer policy,cheapest",
        "offer policy,preferred buyer",
        "preferred buyer,Kestral",
        "preferred unless beaten by,-5",
        "cost of money,101",
        "cost of money,lots",
        "gst rounding,down"
    })
    void aWishThatCannotBeReadIsNamedAndTheUsualTaken(String fact, String value) {
        Reading<FirmTables> reading = reading(NAMED + fact + "," + value + "\n");
        assertThat(reading.findings())
                .singleElement()
                .matches(f -> f.code() == FindingCode.TABLE_ROW_WRONG)
                .matches(f -> f.seen().equals(value));
        MoneyPolicy money = reading.result().orElseThrow().firm().money();
        assertThat(money.choice()).isEqualTo(MoneyPolicy.USUAL.choice());
        assertThat(money.costOfMoney()).isEqualTo(MoneyPolicy.USUAL.costOfMoney());
    }
}
