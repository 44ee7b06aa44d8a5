package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import paperbark.sheet.Reading;
import paperbark.value.State;
import paperbark.value.Trade;

class PeopleTableTest {

    private static Reading<FirmTables> reading(String rows) {
        return TableTexts.smallest()
                .with("people", "person,phone,trade,licence,state,from,to\n" + rows)
                .read();
    }

    @Test
    void rowsOfOnePersonAreTheirLicences() {
        Reading<FirmTables> reading =
                reading(
                        """
                        Banjo Bottlebrush,0491 570 156,plumbing,10001,VIC,,2027-06-30
                        banjo bottlebrush,,plumbing,20001,NSW,2025-01-01,
                        Banjo Bottlebrush,,electrical,30001,Victoria,,
                        """);
        assertThat(reading.findings()).isEmpty();
        Person banjo = reading.result().orElseThrow().people().get(0);
        assertThat(banjo.phone().orElseThrow().full()).isEqualTo("0491 570 156");
        assertThat(banjo.licences()).hasSize(3);
        assertThat(banjo.licences(Trade.PLUMBING, State.NSW))
                .extracting(Licence::number)
                .containsExactly("20001");
    }

    @Test
    void aPersonMayHaveNoLicence() {
        Reading<FirmTables> reading = reading("Olive Office,,,,,,\n");
        assertThat(reading.findings()).isEmpty();
        assertThat(reading.result().orElseThrow().people().get(0).licences()).isEmpty();
    }

    @Test
    void aLicenceWithoutNumberOrStateIsLeftOutWithBothCellsNamed() {
        Reading<FirmTables> reading = reading("Wanda Wattle,,plumbing,,,,\n");
        assertThat(reading.result().orElseThrow().people()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.place().columnHeading())
                .containsExactly("licence", "state");
    }
}
