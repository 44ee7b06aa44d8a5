package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.CELL_UNREADABLE;
import static paperbark.finding.FindingCode.COLUMN_MISSING;
import static paperbark.finding.FindingCode.COLUMN_UNNAMED;
import static paperbark.finding.FindingCode.ROW_TWICE;
import static paperbark.finding.FindingCode.TEXT_GARBLED;
import static paperbark.sheet.Books.codes;
import static paperbark.sheet.Books.row;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.job.Field;

class LostValuesTest {
    @TempDir Path folder;

    @Test
    void twoRowsOfOneNumberAreNamed() {
        byte[] book =
                Books.patched(
                        Books.xlsx(
                                sheet -> {
                                    row(sheet, 2, "SB-1", "Ann");
                                    row(sheet, 3, "SB-2", "Bob");
                                    row(sheet, 4, "SB-3", "Cid");
                                }),
                        Books.SHEET,
                        xml ->
                                xml.replace("r=\"3\"", "r=\"2\"")
                                        .replaceAll("r=\"([AB])3\"", "r=\"$12\""));
        Reading<Sheet> reading = Books.read(folder, "week.xlsx", book);
        assertThat(Books.sheet(reading).rows()).extracting(Row::number).containsExactly(2, 4);
        Finding finding = only(reading);
        assertThat(finding.code()).isEqualTo(ROW_TWICE);
        assertThat(finding.place().rowNumber()).isEqualTo(2);
        assertThat(finding.stops()).isTrue();
    }

    @Test
    void aCellThatTheFileHoldsTwiceIsNotGuessed() {
        Cell cell =
                Books.serial(
                        Books.read(
                                folder,
                                "week.xlsx",
                                Books.withSerialCell(
                                        "<c r=\"D2\"><v>11</v></c><c r=\"D2\"><v>12</v></c>")));
        assertThat(codes(cell)).containsExactly(CELL_UNREADABLE);
        assertThat(cell.kind()).isEqualTo(Cell.Kind.UNUSABLE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"s", "b", "e"})
    void aCellThatSaysItsKindAndHasNoValueIsNamed(String type) {
        String xml = "<c r=\"D2\" t=\"" + type + "\"/>";
        Cell cell = Books.serial(Books.read(folder, "week.xlsx", Books.withSerialCell(xml)));
        assertThat(codes(cell)).containsExactly(CELL_UNREADABLE);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"<c r=\"D2\"/>", "<c r=\"D2\" t=\"n\"/>", "<c r=\"D2\" t=\"inlineStr\"/>"})
    void theBlankCellsThatProgramsWriteAreBlank(String xml) {
        Cell cell = Books.serial(Books.read(folder, "week.xlsx", Books.withSerialCell(xml)));
        assertThat(cell.isBlank()).isTrue();
        assertThat(cell.troubles()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Hans M\u00c3\u00bcller",
                "O\u00e2\u20ac\u2122Brien",
                "Ren\u00c3\u00a9e",
                "Bj\ufffdrn",
                "25\u00c2\u00b0"
            })
    void misreadTextIsNamed(String text) {
        assertThat(CleanText.of(text).troubles())
                .extracting(CellTrouble::code)
                .contains(TEXT_GARBLED);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "S\u00c3O PAULO ST",
                "\u00c2ngela",
                "M\u00fcller & S\u00f8n",
                "\u00c3",
                "25 \u00b0C",
                "Fran\u00e7ois \u2013 \u201cthe\u201d",
                "Nguy\u1ec5n",
                "caf\u00e9\u00bb",
                "Plain"
            })
    void textWrittenInEarnestIsLeftAlone(String text) {
        assertThat(CleanText.of(text).troubles())
                .extracting(CellTrouble::code)
                .doesNotContain(TEXT_GARBLED);
    }

    @Test
    void valuesUnderAnEmptyHeadingAreNamedByTheirColumns() {
        Reading<Sheet> reading =
                Books.csv("Job,,Owner,\nSB-1,second-hand,Ann,\nSB-2,,Bob,ok\nSB-3,new,Cid,\n");
        Finding finding = only(reading);
        assertThat(finding.code()).isEqualTo(COLUMN_UNNAMED);
        assertThat(finding.severity()).isEqualTo(Severity.CHECK);
        assertThat(finding.fact()).contains("B, D").contains("3 rows");
        assertThat(finding.fact()).doesNotContain("second-hand");
        assertThat(UnnamedColumn.of(Books.sheet(reading).columns(), Books.sheet(reading).rows()))
                .extracting(UnnamedColumn::letters, UnnamedColumn::ofList)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("B", true),
                        org.assertj.core.groups.Tuple.tuple("D", false));
    }

    @Test
    void countedRowsNeedNoHeading() {
        assertThat(Books.csv(",Job,Owner\n1,SB-1,Ann\n2,SB-2,Bob\n3,SB-3,Cid\n").findings())
                .isEmpty();
    }

    @Test
    void missingColumnsAreOneFinding() {
        Sheet sheet = Books.sheet(Books.csv("Job,Owner\nSB-1,Ann\n"));
        Sheet table = new Sheet("columns.csv", "", 1, List.of(), List.of());
        List<Finding> findings =
                ColumnMap.of(sheet, ColumnNames.of(Field.values(), table, (r, why) -> {}))
                        .findings();
        List<Finding> missing =
                findings.stream()
                        .filter(f -> f.code() == COLUMN_MISSING)
                        .collect(Collectors.toList());
        assertThat(missing).hasSize(1);
        assertThat(missing.get(0).fact()).contains("\"Maker\", \"Model\"");
    }

    private static Finding only(Reading<Sheet> reading) {
        assertThat(reading.findings()).hasSize(1);
        return reading.findings().get(0);
    }
}
