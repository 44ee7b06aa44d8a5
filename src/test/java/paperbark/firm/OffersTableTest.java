package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.sheet.Reading;
import paperbark.value.Money;
import paperbark.value.SchemeName;
import paperbark.value.State;

class OffersTableTest {
    private static final String HEADINGS =
            "buyer,scheme,from,to,price per certificate,fee per claim,minimum,maximum,payment days\n";

    private static Reading<FirmTables> reading(String rows) {
        return TableTexts.smallest().with("offers", HEADINGS + rows).read();
    }

    @Test
    void anOfferIsRead() {
        Reading<FirmTables> reading =
                reading("kestrel certificates,stc,1/11/2026,30/11/2026,$37.255,25,5,,10\n");
        assertThat(reading.findings()).isEmpty();
        Offer offer = reading.result().orElseThrow().offers().get(0);
        assertThat(offer.buyer()).isEqualTo("Kestrel Certificates");
        assertThat(offer.scheme()).isEqualTo(SchemeName.STC);
        assertThat(offer.pricePerCertificate().amount()).isEqualByComparingTo("37.255");
        assertThat(offer.feePerClaim()).isEqualTo(Money.of("25"));
        assertThat(offer.minimum()).contains(5);
        assertThat(offer.maximum()).isEmpty();
        assertThat(offer.row()).isEqualTo(2);
    }

    @Test
    void anOfferThatOverlapsAnEarlierOneByADayIsLeftOut() {
        Reading<FirmTables> reading =
                reading(
                        """
                        Kestrel Certificates,STC,2026-10-01,2026-10-31,36,,,,10
                        Kestrel Certificates,STC,2026-10-31,2026-11-30,37,,,,10
                        Kestrel Certificates,VEEC,2026-10-31,2026-11-30,70,,,,10
                        Kestrel Certificates,STC,2026-11-01,2026-11-30,37,,,,10
                        """);
        assertThat(reading.result().orElseThrow().offers())
                .extracting(Offer::row)
                .containsExactly(2, 4, 5);
        assertThat(reading.findings())
                .singleElement()
                .matches(f -> f.place().rowNumber() == 3 && f.also().get(0).rowNumber() == 2);
    }

    @Test
    void offersForDifferentSizesOfClaimRunSideBySide() {
        Reading<FirmTables> reading =
                reading(
                        """
                        Kestrel Certificates,STC,2026-11-01,,36,,,99,10
                        Kestrel Certificates,STC,2026-11-01,,37,,100,,10
                        """);
        assertThat(reading.findings()).isEmpty();
        assertThat(reading.result().orElseThrow().offers()).hasSize(2);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Kestral,STC,,,36,,,,10;buyer",
                "Kestrel Certificates,LGC,,,36,,,,10;scheme",
                "Kestrel Certificates,STC,,,36 dollars,,,,10;price per certificate",
                "Kestrel Certificates,STC,,,36,-5,,,10;fee per claim",
                "Kestrel Certificates,STC,,,36,,9,5,10;maximum",
                "Kestrel Certificates,STC,,,36,,,,;payment days",
                "Kestrel Certificates,STC,31/11/2026,,36,,,,10;from",
            })
    void aRowThatCannotBeUsedIsLeftOutAndTheCellNamed(String row, String heading) {
        Reading<FirmTables> reading = reading(row + "\n");
        assertThat(reading.result().orElseThrow().offers()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.place().columnHeading())
                .containsExactly(heading);
    }

    private static Reading<FirmTables> withTerms(String rows) {
        return TableTexts.smallest()
                .with(
                        "offers",
                        "buyer,scheme,from,to,price per certificate,payment days,gst basis,fee per certificate,zones,states,paid to,form\n"
                                + rows)
                .read();
    }

    @Test
    void theTermsOfAnOfferAreRead() {
        Reading<FirmTables> reading =
                withTerms(
                        "Kestrel Certificates,STC,,,37,10,included,0.125,3; 4,vic nsw,Firm,kestrel-b\n");
        assertThat(reading.findings()).isEmpty();
        OfferTerms terms = reading.result().orElseThrow().offers().get(0).terms();
        assertThat(terms.gstBasis()).isEqualTo(GstBasis.INCLUDED);
        assertThat(terms.feePerCertificate().amount()).isEqualByComparingTo("0.125");
        assertThat(terms.zones()).containsExactly(3, 4);
        assertThat(terms.states()).containsExactly(State.NSW, State.VIC);
        assertThat(terms.paidTo()).isEqualTo(PaidTo.FIRM);
        assertThat(terms.form()).contains("kestrel-b");
    }

    @Test
    void emptyTermsArePlain() {
        Reading<FirmTables> reading = withTerms("Kestrel Certificates,STC,,,37,10,,,,,,\n");
        assertThat(reading.findings()).isEmpty();
        assertThat(reading.result().orElseThrow().offers().get(0).terms())
                .isEqualTo(OfferTerms.PLAIN);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '"',
            value = {
                "net,,,,,;gst basis",
                "plus,free,,,,;fee per certificate",
                "plus,,\"four\",,,;zones",
                "plus,,,Vic Tas Mars,,;states",
                "plus,,,,agent,;paid to"
            })
    void aTermThatCannotBeReadIsNamed(String terms, String heading) {
        Reading<FirmTables> reading = withTerms("Kestrel Certificates,STC,,,37,10," + terms + "\n");
        assertThat(reading.result().orElseThrow().offers()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.place().columnHeading())
                .containsExactly(heading);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1;2,,either | 3,,either | 2",
                "1;2,,either | 2;3,,either | 1",
                "1;2,,either | ,,either | 1",
                ",VIC,either | ,SA,either | 2",
                ",VIC,either | ,VIC SA,either | 1",
                ",,owner | ,,firm | 2",
                ",,owner | ,,either | 1"
            })
    void offersForDifferentPlacesOrPayeesRunSideBySide(String one, String other, int kept) {
        String row = "Kestrel Certificates,STC,,,37,10,,,";
        Reading<FirmTables> reading =
                withTerms(row + one.strip() + ",\n" + row + other.strip() + ",\n");
        assertThat(reading.result().orElseThrow().offers()).hasSize(kept);
        assertThat(reading.findings()).hasSize(2 - kept);
    }
}
