package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.sheet.Reading;
import paperbark.value.Money;

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
}
