package paperbark.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.Words;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

class RowFindingsTest {
    private static final ColumnNames<Field> NAMES =
            ColumnNames.of(
                    Field.values(),
                    new Sheet("columns.csv", "", 1, List.of(), List.of()),
                    (row, why) -> {});
    private static final String HEADINGS =
            "Job,Owner,Site street,Site suburb,Site state,Site postcode,Maker,Model,Litres,Seller\n";
    private static final String SITE = "Ann,4 Teaspoon Lane,Ballan,VIC,3342,";

    @Test
    void aRowThatIsTooLongHoldsItsJob() {
        Finding finding = only("SB-1," + SITE + "Dunlin,D270-A,270,Curlew,left over\n");
        assertThat(finding.code()).isEqualTo(FindingCode.ROW_LONG);
        assertThat(finding.job()).contains("SB-1");
        assertThat(finding.stops()).isTrue();
    }

    @Test
    void aRowWithoutANeededFactAtItsEndHoldsItsJob() {
        Finding finding = only("SB-1," + SITE + "Dunlin\n");
        assertThat(finding.code()).isEqualTo(FindingCode.ROW_SHORT);
        assertThat(finding.job()).contains("SB-1");
        assertThat(finding.stops()).isTrue();
    }

    @Test
    void aRowThatLeavesOutEmptyCellsAtItsEndIsACheck() {
        Finding finding = only("SB-1," + SITE + "Dunlin,D270-A\n");
        assertThat(finding.code()).isEqualTo(FindingCode.ROW_SHORT);
        assertThat(finding.severity()).isEqualTo(Severity.CHECK);
    }

    @Test
    void aRowWithoutAJobNumberHasNoJobToHold() {
        Finding finding = only("," + SITE + "Dunlin\n");
        assertThat(finding.job()).isEmpty();
        assertThat(finding.stops()).isTrue();
    }

    private static Finding only(String row) {
        Reading<Sheet> reading =
                SheetReader.readCsv(
                        "week.csv",
                        (HEADINGS + row).getBytes(StandardCharsets.UTF_8),
                        NAMES::knows);
        Sheet sheet = reading.result().orElseThrow();
        Map<Field, Column> columns = ColumnMap.of(sheet, NAMES).result().orElseThrow();
        List<Finding> findings =
                RowFindings.of(
                        reading.findings(),
                        JobRows.of(sheet, columns, Words.SHIPPED, false),
                        columns,
                        row.startsWith(",") ? Map.of() : Map.of(2, "SB-1"));
        assertThat(findings).hasSize(1);
        return findings.get(0);
    }
}
