package paperbark.firm;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.sheet.Reading;
import paperbark.value.State;
import paperbark.value.Trade;

class FirmTablesReaderTest {

    @Test
    void theSmallestSetOfTablesIsEnough() {
        Reading<FirmTables> reading = TableTexts.smallest().read();
        assertThat(reading.findings()).isEmpty();
        assertThat(reading.result().orElseThrow().firm().abn()).hasToString("99 000 000 000");
    }

    @Test
    void everyMissingTableIsNamedAtOnce() {
        Reading<FirmTables> reading =
                TableTexts.smallest().without("makers").without("offers").read();
        assertThat(reading.result()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.code().code() + " " + f.where())
                .containsExactly("table-missing makers.csv", "table-missing offers.csv");
    }

    @Test
    void anEmptyFolderLacksEightTables(@TempDir Path folder) {
        Reading<FirmTables> reading = FirmTablesReader.read(folder);
        assertThat(reading.result()).isEmpty();
        assertThat(reading.findings())
                .hasSize(8)
                .allMatch(f -> f.code() == FindingCode.TABLE_MISSING)
                .extracting(Finding::fact)
                .contains("The tables folder has no file state-papers.csv.");
    }

    @Test
    void aPathThatLeadsNowhereIsSaidEightTimes(@TempDir Path folder) {
        assertThat(FirmTablesReader.read(folder.resolve("tables.xlsx")).findings())
                .extracting(Finding::where)
                .containsOnly("tables.xlsx");
    }

    @Test
    void aMissingColumnStopsAndNamesTheHeadingsFound() {
        Reading<FirmTables> reading =
                TableTexts.smallest().with("people", "Person,Trade,Lic no\n").read();
        assertThat(reading.result()).isEmpty();
        assertThat(reading.findings())
                .filteredOn(Finding::stops)
                .extracting(f -> f.code().code() + ": " + f.fact())
                .containsExactly(
                        "column-missing: The table has no column licence; its headings are"
                                + " Person, Trade, Lic no.",
                        "column-missing: The table has no column state; its headings are"
                                + " Person, Trade, Lic no.");
        assertThat(reading.findings())
                .extracting(Finding::code)
                .contains(FindingCode.COLUMN_UNKNOWN);
    }

    @Test
    void twoColumnsOfOneMeaningStop() {
        Reading<FirmTables> reading =
                TableTexts.smallest().with("makers", "Maker,Phone,phone \nDunlin,,\n").read();
        assertThat(reading.result()).isEmpty();
        assertThat(reading.findings())
                .extracting(f -> f.code() + " " + f.where())
                .containsExactly("HEADING_TWICE makers.csv > column C \"phone \"");
    }

    @Test
    void headingsMatchWhateverTheirCaseSpacesAndPunctuation() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .with(
                                "people",
                                """
                                PERSON,Trade ,Licence,State,From:,T.O.
                                Wanda Wattle,plumbing,10001,vic,1/7/2024,30/6/2027
                                """)
                        .read();
        assertThat(reading.findings()).isEmpty();
        Person wanda = reading.result().orElseThrow().person("wanda  wattle").orElseThrow();
        assertThat(wanda.licence(Trade.PLUMBING, State.VIC, LocalDate.of(2027, 6, 30))).isPresent();
        assertThat(wanda.licence(Trade.PLUMBING, State.VIC, LocalDate.of(2027, 7, 1))).isEmpty();
    }

    @Test
    void aWrongRowIsLeftOutAndTheOthersStay() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .with(
                                "sellers",
                                """
                                seller,phone
                                Mudlark Merchants,03 5550 0101
                                Bogong Bathrooms,12
                                Curlew Supplies,
                                """)
                        .read();
        assertThat(reading.result().orElseThrow().sellers())
                .extracting(Seller::name)
                .containsExactly("Mudlark Merchants", "Curlew Supplies");
        Finding finding = reading.findings().get(0);
        assertThat(finding.code()).isEqualTo(FindingCode.TABLE_ROW_WRONG);
        assertThat(finding.severity()).isEqualTo(Severity.CHECK);
        assertThat(finding.where()).isEqualTo("sellers.csv > B3 \"phone\"");
        assertThat(finding.seen()).isEqualTo("12");
        assertThat(finding.remedy()).isNotBlank();
    }

    @Test
    void withoutMakersNoProductIsBlamed() {
        Reading<FirmTables> reading =
                TableTexts.smallest()
                        .without("makers")
                        .with(
                                "products",
                                String.join(",", ProductsTable.SHAPE.needed())
                                        + "\nDunlin,DH 260,heat pump,electric,260,,,,,,,,,\n")
                        .read();
        assertThat(reading.findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.TABLE_MISSING);
    }
}
