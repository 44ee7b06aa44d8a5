package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Test;
import paperbark.sheet.Reading;
import paperbark.value.SchemeName;
import paperbark.value.State;
import paperbark.value.Trade;

class OtherTablesTest {

    @Test
    void aMakerNamesItsWarrantyVariantAndAddress() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .with(
                                "makers",
                                """
                                maker,street,suburb,state,postcode,phone,email,warranty variant
                                Dunlin,9 Sandpiper Court,Ballan,VIC,3342,03 5550 0300,care@example.com,dunlin
                                DUNLIN,,,,,,,
                                """)
                        .read();
        assertThat(reading.result().orElseThrow().makers())
                .singleElement()
                .matches(m -> m.warrantyVariant().orElseThrow().equals("dunlin"))
                .matches(m -> m.address().isComplete());
        assertThat(reading.findings())
                .extracting(f -> f.where() + ": " + f.fact())
                .containsExactly("makers.csv > row 3: Row 2 has the same name, DUNLIN.");
    }

    @Test
    void aBuyerMayHaveAFormOfItsOwn() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .with(
                                "buyers",
                                """
                                buyer,abn,STC registration,STC form
                                Kestrel Certificates,80 000 000 001,A-1,kestrel
                                Pipit and Wren,80 000 000 002,A-2,
                                """)
                        .read();
        assertThat(reading.result().orElseThrow().buyers())
                .singleElement()
                .matches(b -> b.forms().equals(Map.of(SchemeName.STC, "kestrel")))
                .matches(b -> b.registrations().equals(Map.of(SchemeName.STC, "A-1")));
        assertThat(reading.findings())
                .singleElement()
                .matches(f -> f.seen().equals("80 000 000 002"));
    }

    @Test
    void aStateAsksOneCertificateOfATrade() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .with(
                                "state-papers",
                                """
                                state,trade,document,days,working days,source
                                VIC,plumbing,Compliance certificate,5,no,Building Act 1993 s 221ZH
                                WA,plumbing,Certificate of compliance,5,yes,regulator's page
                                VIC,plumbing,Another,6,no,a page
                                TAS,gas,Form,1,no,a page
                                """)
                        .read();
        FirmTables tables = reading.result().orElseThrow();
        assertThat(tables.statePaper(State.VIC, Trade.PLUMBING).orElseThrow().days()).isEqualTo(5);
        assertThat(
                        tables.statePaper(State.WA, Trade.PLUMBING)
                                .orElseThrow()
                                .dueAfter(LocalDate.of(2026, 11, 20)))
                .isEqualTo(LocalDate.of(2026, 11, 27));
        assertThat(reading.findings()).extracting(f -> f.place().rowNumber()).containsExactly(4, 5);
    }
}
