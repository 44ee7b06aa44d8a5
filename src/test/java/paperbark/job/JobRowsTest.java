package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.Words;
import paperbark.sheet.Cell;
import paperbark.sheet.CellBuilder;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

class JobRowsTest {
    private static final String HEADINGS =
            "Job,Stage,Owner,Owner's phone,Site street,Site suburb,Site state,Site postcode,Maker,Model,Office note\n";
    private static final String CERTIFICATES =
            HEADINGS.strip() + ",Certificates of this row,Number of these certificates\n";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "pink = waiting for serial,,,,,,,,,,",
                "WEEK 48 - to be confirmed,,,,,,,,,,",
                "Freight,,,,,,,,,,120.00",
                "2 jobs,,,,,,,,,,",
                "end of list,,,,,,,,,,",
                ",,,,,,,,,,see Bluegum about the Umbrella Rise job",
                "SB-9,booked,Ann,,,Ballan,VIC,3342,,,ring her first"
            })
    void aRowThatSaysLessThanTwoThingsOfAJobIsNone(String row) {
        JobRows rows = rows("", row);
        assertThat(rows.sheet().rows()).isEmpty();
        assertThat(rows.others()).containsExactly(2);
        Finding finding = rows.findings().get(0);
        assertThat(finding.code()).isEqualTo(FindingCode.ROW_NO_JOB);
        assertThat(finding.severity()).isEqualTo(Severity.CHECK);
        assertThat(finding.seen()).isNotEmpty();
        assertThat(finding.fact()).contains("\"Site street\", \"Maker\", \"Model\"");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "SB-9,booked,Ann,,4 Teaspoon Lane,Ballan,VIC,3342,,,",
                "SB-9,booked,,,,,,,Dunlin,D270-A,",
                ",booked,Ann,,,,,,Dunlin,,",
                "SB-9,called off,,,,,,,,,"
            })
    void twoThingsOfAJobAreEnoughAndACancelledOneNeedsOnlyItsNumber(String row) {
        JobRows rows = rows("", row);
        assertThat(rows.sheet().rows()).hasSize(1);
        assertThat(rows.findings()).isEmpty();
    }

    @Test
    void whatHoldsForEveryRowMakesNoJobOfARemark() {
        assertThat(rows("maker,,Dunlin\nmodel,,D270-A", "WEEK 48,,,,,,,,,,").sheet().rows())
                .isEmpty();
    }

    @Test
    void aTelephoneNumberIsNotQuoted() {
        assertThat(rows("", "ring,,,0491 570 156,,,,,,,").findings().get(0).seen())
                .isEqualTo("ring");
    }

    @Test
    void aRowWithTheNumberOfAJobIsLeftOutWithAWordOnThatJob() {
        JobRows rows =
                rows(
                        "",
                        "SB-9,booked,Ann,,,Ballan,VIC,3342,Dunlin,,\nsb-9,,,,,,,,,,ring her first");
        assertThat(rows.others()).containsExactly(3);
        assertThat(rows.findings().get(0).job()).contains("SB-9");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "SB-9,,,,,,,,,,call again,,",
                "SB-9 call again,,,,,,,,,,,,",
                "SB-9 call again,,,,,,,,,,,VEEC,7",
                "SB-8,,,,,,,,,,,VEEC,7"
            })
    void aRemarkInAListWithARowACertificateStaysOne(String row) {
        assertThat(certificateRows(row).others()).containsExactly(3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"SB-9,,,,,,,,,,,VEEC,7", "sb-9,,,,,,,,,,,VEEC,", "SB-9,,,,,,,,,,,,7"})
    void aRowThatTellsOfCertificatesOfAJobOfTheListIsARowOfThatJob(String row) {
        JobRows rows = certificateRows(row);
        assertThat(rows.sheet().rows()).hasSize(2);
        assertThat(rows.findings()).isEmpty();
    }

    @Test
    void certificatesThatAreLeftOutHoldTheirJob() {
        Finding untold =
                rows("", CERTIFICATES, "SB-9,booked,Ann,,,,,,Dunlin,,,STC,9\nSB-9,,,,,,,,,,,VEEC,7")
                        .findings()
                        .get(0);
        assertThat(untold.job()).contains("SB-9");
        assertThat(untold.holds()).containsExactlyInAnyOrderElementsOf(Concern.CLAIMS);
        assertThat(untold.remedy()).contains("row-a-certificate,,yes");

        Finding merged = certificateRows("SB-9,,,,,,,,,,,VEEC,7", true).findings().get(0);
        assertThat(merged.job()).contains("SB-9");
        assertThat(merged.stops()).isTrue();
        assertThat(merged.remedy()).startsWith("Unmerge the job number");
    }

    /** As where the number is merged with the one above. */
    private static Sheet withoutNumber(Sheet sheet) {
        Row second = sheet.rows().get(1);
        Map<Integer, Cell> cells = new HashMap<>(second.cells());
        CellTrouble merged =
                new CellTrouble(FindingCode.CELL_MERGED, "A3 is merged.", "", Optional.of("SB-9"));
        cells.put(1, CellBuilder.builder(Cell.blank(1, "A3")).troubles(List.of(merged)).build());
        return sheet.with(List.of(sheet.rows().get(0), new Row(3, cells)));
    }

    private static JobRows certificateRows(String second, boolean merged) {
        ColumnNames<Field> names = Register.names("row-a-certificate,,yes");
        Sheet sheet =
                sheet(
                        names,
                        CERTIFICATES + "SB-9,booked,Ann,,,,,,Dunlin,,,STC,9\n" + second + "\n");
        return JobRows.of(
                merged ? withoutNumber(sheet) : sheet,
                ColumnMap.of(sheet, names).result().orElseThrow(),
                Words.SHIPPED,
                true);
    }

    @Test
    void theRowWithTheJobsFactsMayComeSecond() {
        assertThat(
                        rows(
                                        "row-a-certificate,,yes",
                                        CERTIFICATES,
                                        "SB-9,,,,,,,,,,,VEEC,7\nSB-9,,Ann,,,,,,Dunlin,,,STC,9")
                                .others())
                .isEmpty();
    }

    private static JobRows certificateRows(String second) {
        return certificateRows(second, false);
    }

    private static JobRows rows(String columnLines, String row) {
        return rows(columnLines, HEADINGS, row);
    }

    private static JobRows rows(String columnLines, String headings, String row) {
        ColumnNames<Field> names = Register.names(columnLines);
        Sheet sheet = sheet(names, headings + row + "\n");
        return JobRows.of(
                sheet,
                ColumnMap.of(sheet, names).result().orElseThrow(),
                Words.SHIPPED,
                JobReader.isRowEach(names));
    }

    private static Sheet sheet(ColumnNames<Field> names, String list) {
        return SheetReader.readCsv("week.csv", list.getBytes(StandardCharsets.UTF_8), names::knows)
                .result()
                .orElseThrow();
    }
}
