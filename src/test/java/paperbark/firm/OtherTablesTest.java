package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
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
    void theFirmTeachesItsWordsOnTopOfThoseThatShip() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .with(
                                "words",
                                """
                                field,word,ours
                                stage,Fell through,cancelled
                                Stage,complete,booked
                                stage,fell-through,booked
                                stage,parked,waiting
                                colour,red,booked
                                yes-no,ja,yes
                                """)
                        .read();
        Words words = reading.result().orElseThrow().words();
        assertThat(stage(words, "FELL  THROUGH")).contains("cancelled");
        assertThat(stage(words, "complete")).contains("booked");
        assertThat(stage(words, "Done")).contains("installed");
        assertThat(stage(words, "parked")).isEmpty();
        assertThat(words.yesNo("stc-claim", "Ja").toOptional()).contains(true);
        assertThat(Words.SHIPPED.yesNo("stc-claim", "Ja").toOptional()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.place().rowNumber() + " " + f.place().columnHeading())
                .containsExactly("4 ", "5 ours", "6 field");
    }

    private static Optional<String> stage(Words words, String text) {
        String[] ours = {"booked", "installed", "no claim", "cancelled"};
        return words.read("stage", text, ours, word -> word).toOptional();
    }

    @Test
    void aDayThatBecameAPlainNumberIsCountedInTablesToo() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .with(
                                "people",
                                """
                                person,phone,trade,licence,state,from,to
                                Wanda Wattle,491570006,plumbing,12345,VIC,46351,
                                """)
                        .read();
        assertThat(reading.result().orElseThrow().people())
                .singleElement()
                .matches(p -> p.licences().get(0).inForce().contains(LocalDate.of(2026, 11, 25)))
                .matches(p -> !p.licences().get(0).inForce().contains(LocalDate.of(2026, 11, 24)));
        assertThat(reading.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.LEADING_ZERO_LOST, FindingCode.NUMBER_FOR_DATE);
    }

    @Test
    void aStateAsksOneCertificateOfATrade() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .with(
                                "state-papers",
                                """
                                state,trade,document,days,working days,source,months
                                VIC,plumbing,Compliance certificate,5,no,Building Act 1993 s 221ZH,
                                WA,plumbing,Certificate of compliance,5,yes,regulator's page,
                                VIC,plumbing,Another,6,no,a page,
                                TAS,gas,Form,1,no,a page,
                                VIC,electrical,Safety certificate,0,no,a page,1
                                """)
                        .read();
        FirmTables tables = reading.result().orElseThrow();
        assertThat(tables.statePaper(State.VIC, Trade.PLUMBING).orElseThrow().days()).isEqualTo(5);
        assertThat(
                        tables.statePaper(State.WA, Trade.PLUMBING)
                                .orElseThrow()
                                .dueAfter(LocalDate.of(2026, 11, 20), day -> false))
                .isEqualTo(LocalDate.of(2026, 11, 27));
        // One month, not 30 days: common practice, no source for how a month is counted.
        assertThat(
                        tables.statePaper(State.VIC, Trade.ELECTRICAL)
                                .orElseThrow()
                                .dueAfter(LocalDate.of(2027, 1, 31), day -> false))
                .isEqualTo(LocalDate.of(2027, 2, 28));
        assertThat(reading.findings()).extracting(f -> f.place().rowNumber()).containsExactly(4, 5);
    }
}
