package paperbark.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.CELL_MERGED;
import static paperbark.finding.FindingCode.CELL_TOO_LONG;
import static paperbark.finding.FindingCode.CELL_UNREADABLE;
import static paperbark.finding.FindingCode.DATES_FROM_1904;
import static paperbark.finding.FindingCode.DATE_OUT_OF_RANGE;
import static paperbark.finding.FindingCode.DIGITS_LOST;
import static paperbark.finding.FindingCode.FORMULA_ERROR;
import static paperbark.finding.FindingCode.FORMULA_EXTERNAL;
import static paperbark.finding.FindingCode.FORMULA_NOT_CALCULATED;
import static paperbark.finding.FindingCode.SCRIPTS_MIXED;
import static paperbark.finding.FindingCode.TEXT_CLEANED;
import static paperbark.sheet.Books.codes;
import static paperbark.sheet.Books.row;
import static paperbark.sheet.Books.serial;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.function.Consumer;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FormulaError;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a spreadsheet does to data, one test for each way. */
class CellTruthTest {
    @TempDir Path folder;

    @Test
    void aNumberThatLostItsZeroIsPassedOnAsANumber() {
        Cell cell = serialOf(800);
        assertThat(cell.kind()).isEqualTo(Cell.Kind.NUMBER);
        assertThat(cell.text()).isEqualTo("800");
        assertThat(cell.number()).contains(new BigDecimal("800"));
    }

    @ParameterizedTest
    @CsvSource({
        "1234567,1234567",
        "0.1,0.1",
        "33.333333333333336,33.3333333333333",
        "1E-7,0.0000001",
        "100000000000000,100000000000000",
        "-0.0,0",
        "150,150"
    })
    void numbersAreWrittenInPlainDigits(double stored, String text) {
        assertThat(serialOf(stored).text()).isEqualTo(text);
        assertThat(serialOf(stored).troubles()).isEmpty();
    }

    @Test
    void fifteenDigitsAreKeptAndSixteenAreLost() {
        assertThat(codes(serialOf(123456789012345.0))).isEmpty();
        Cell lost = serialOf(1234567890123456.0);
        assertThat(codes(lost)).containsExactly(DIGITS_LOST);
        assertThat(lost.text()).isEqualTo("1234567890123456").doesNotContain("E");
    }

    @Test
    void aDateIsKnownByItsStyleAndComesAsADay() {
        Cell cell = serial(read(sheet -> styled(row(sheet, 2, "SB-1", "Ann", null, 46000), 3)));
        assertThat(cell.kind()).isEqualTo(Cell.Kind.DATE);
        assertThat(cell.date()).contains(LocalDate.of(2025, 12, 9));
        assertThat(cell.text()).isEqualTo("2025-12-09");
    }

    @Test
    void aDayCountWithoutDateStyleStaysANumber() {
        assertThat(serialOf(46000).kind()).isEqualTo(Cell.Kind.NUMBER);
        assertThat(serialOf(46000).date()).isEmpty();
    }

    @Test
    void aWorkbookThatCountsFrom1904IsReadThatWayAndSaysSoOnce() {
        byte[] plain =
                Books.xlsx(
                        sheet -> {
                            styled(row(sheet, 2, "SB-1", "Ann", null, 46000), 3);
                            styled(row(sheet, 3, "SB-2", "Bob", null, 0), 3);
                        });
        byte[] book =
                Books.patched(
                        plain,
                        "xl/workbook.xml",
                        text ->
                                text.replaceFirst(
                                        "<workbookPr[^>]*/>", "<workbookPr date1904=\"1\"/>"));
        Reading<Sheet> reading = Books.read(folder, "week.xlsx", book);
        assertThat(serial(reading).text()).isEqualTo("2029-12-10");
        Sheet sheet = Books.sheet(reading);
        assertThat(sheet.rows().get(1).cell(sheet.columns().get(3)).text()).isEqualTo("1904-01-01");
        assertThat(codes(reading)).containsExactly(DATES_FROM_1904);
    }

    @ParameterizedTest
    @ValueSource(doubles = {59, 60, -1, 0, 0.5, 2958466, 1e15})
    void aDayCountThatIsNoSureDayIsOutOfRange(double days) {
        Cell cell = serial(read(sheet -> styled(row(sheet, 2, "SB-1", "Ann", null, days), 3)));
        assertThat(codes(cell)).containsExactly(DATE_OUT_OF_RANGE);
        assertThat(cell.kind()).isEqualTo(Cell.Kind.UNUSABLE);
        assertThat(cell.date()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"61,1900-03-01", "2958465,9999-12-31"})
    void theFirstAndLastSureDaysAreRead(double days, String text) {
        Cell cell = serial(read(sheet -> styled(row(sheet, 2, "SB-1", "Ann", null, days), 3)));
        assertThat(cell.text()).isEqualTo(text);
    }

    @Test
    void aDateCellOfTheIsoTypeIsRead() {
        Cell cell = serialXml("<c r=\"D2\" t=\"d\"><v>2026-11-20T00:00:00</v></c>");
        assertThat(cell.date()).contains(LocalDate.of(2026, 11, 20));
    }

    @Test
    void aBrokenIsoDateIsOneTroubleAndItsNeighboursAreRead() {
        byte[] book = Books.withSerialCell("<c r=\"D2\" t=\"d\"><v>20 Nov</v></c>");
        Reading<Sheet> reading = Books.read(folder, "week.xlsx", book);
        assertThat(codes(serial(reading))).containsExactly(CELL_UNREADABLE);
        Sheet sheet = Books.sheet(reading);
        assertThat(sheet.rows().get(0).cell(sheet.columns().get(1)).text())
                .isEqualTo("Ann Example");
    }

    @Test
    void aDateTypedAsTextStaysText() {
        assertThat(serialOf("02/11/2026").kind()).isEqualTo(Cell.Kind.TEXT);
        assertThat(serialOf("02/11/2026").text()).isEqualTo("02/11/2026");
    }

    @ParameterizedTest
    @ValueSource(strings = {"#REF!", "#N/A", "#SPILL!"})
    void aFormulaWithAnErrorShowsTheError(String error) {
        Cell cell = serialXml("<c r=\"D2\" t=\"e\"><f>A1</f><v>" + error + "</v></c>");
        assertThat(codes(cell)).containsExactly(FORMULA_ERROR);
        assertThat(cell.text()).isEqualTo(error);
        assertThat(cell.troubles().get(0).fact()).contains(error);
    }

    @Test
    void anErrorWithoutFormulaIsAnErrorToo() {
        Cell cell =
                serial(
                        read(
                                sheet ->
                                        row(sheet, 2, "SB-1", "Ann", null, "x")
                                                .createCell(3)
                                                .setCellErrorValue(FormulaError.DIV0.getCode())));
        assertThat(codes(cell)).containsExactly(FORMULA_ERROR);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<c r=\"D2\"><f>1+1</f></c>",
                "<c r=\"D2\"><f>1+1</f><v></v></c>",
                "<c r=\"D2\" t=\"str\"><f>A1</f></c>"
            })
    void aFormulaWithoutStoredResultIsNotZero(String xml) {
        Cell cell = serialXml(xml);
        assertThat(codes(cell)).containsExactly(FORMULA_NOT_CALCULATED);
        assertThat(cell.text()).isEmpty();
        assertThat(cell.number()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "<c r=\"D2\"><f>1+1</f><v>2</v></c>, NUMBER, 2",
        "<c r=\"D2\" t=\"str\"><f>A1</f><v>TD-1</v></c>, TEXT, TD-1",
        "<c r=\"D2\" t=\"b\"><f>TRUE()</f><v>1</v></c>, BOOLEAN, yes",
        "<c r=\"D2\" t=\"b\"><v>0</v></c>, BOOLEAN, no",
        "<c r=\"D2\" t=\"str\"><f>A1</f><v></v></c>, BLANK, ''",
    })
    void theStoredResultOfAFormulaIsUsedAndNothingIsCalculated(
            String xml, Cell.Kind kind, String text) {
        Cell cell = serialXml(xml);
        assertThat(cell.kind()).isEqualTo(kind);
        assertThat(cell.text()).isEqualTo(text);
        assertThat(cell.troubles()).isEmpty();
    }

    @Test
    void aWrongStoredResultIsNotCalculatedAgain() {
        assertThat(serialXml("<c r=\"D2\"><f>1+1</f><v>7</v></c>").text()).isEqualTo("7");
    }

    @ParameterizedTest
    @ValueSource(strings = {"[1]Prices!$B$2", "'[2]My sheet'!A1+1", "SUM(1,[1]A!B1)"})
    void aFormulaToAnotherWorkbookGivesItsValueWithACheck(String formula) {
        Cell cell = serialXml("<c r=\"D2\"><f>" + formula + "</f><v>5</v></c>");
        assertThat(cell.text()).isEqualTo("5");
        assertThat(codes(cell)).containsExactly(FORMULA_EXTERNAL);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Jobs[Serial]", "Jobs[[#This Row],[Serial]]+Other!A1", "Other!A1"})
    void aFormulaInsideTheWorkbookIsNoReferenceToAnother(String formula) {
        assertThat(codes(serialXml("<c r=\"D2\"><f>" + formula + "</f><v>5</v></c>"))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"999", "-1", "x"})
    void aSharedTextThatIsNotThereIsDamage(String index) {
        Cell cell = serialXml("<c r=\"D2\" t=\"s\"><v>" + index + "</v></c>");
        assertThat(codes(cell)).containsExactly(CELL_UNREADABLE);
        assertThat(cell.kind()).isEqualTo(Cell.Kind.UNUSABLE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"12,5", "NaN", "abc"})
    void aNumberThatIsNoneIsOneTrouble(String value) {
        Cell cell = serialXml("<c r=\"D2\"><v>" + value + "</v></c>");
        assertThat(codes(cell)).containsExactly(CELL_UNREADABLE);
    }

    @Test
    void invisibleAndForeignLettersAreCleanedOrNamed() {
        assertThat(serialOf("\u00A0TD-1 \u00A0").text()).isEqualTo("TD-1");
        assertThat(codes(serialOf("\u00A0TD-1 \u00A0"))).isEmpty();
        assertThat(serialOf("TD\u200B-1\u00AD").text()).isEqualTo("TD-1");
        assertThat(codes(serialOf("TD\u200B-1"))).containsExactly(TEXT_CLEANED);
        assertThat(serialOf("\uFF34\uFF24-\uFF11").text()).isEqualTo("TD-1");
        assertThat(codes(serialOf("T\u0410-1"))).containsExactly(SCRIPTS_MIXED);
    }

    @Test
    void lineBreaksInsideACellBecomeSpaces() {
        assertThat(serialOf("first\r\nsecond\tthird").text()).isEqualTo("first second third");
        Cell escaped = serialXml("<c r=\"D2\" t=\"inlineStr\"><is><t>one_x000D_\ntwo</t></is></c>");
        assertThat(escaped.text()).isEqualTo("one two");
        assertThat(codes(escaped)).isEmpty();
    }

    @Test
    void onlyTheFirstOfMergedCellsHasAValueAndTheOthersOfferIt() {
        Reading<Sheet> reading =
                read(
                        sheet -> {
                            row(sheet, 2, "SB-1", "Ann", null, "TD-1");
                            row(sheet, 3, "SB-2", "Bob");
                            row(sheet, 4, "SB-3", "Cec");
                            sheet.addMergedRegion(CellRangeAddress.valueOf("D2:D4"));
                        });
        Sheet sheet = Books.sheet(reading);
        assertThat(codes(serial(reading))).isEmpty();
        for (int row : new int[] {1, 2}) {
            Cell cell = sheet.rows().get(row).cell(sheet.columns().get(3));
            assertThat(cell.isBlank()).isTrue();
            assertThat(codes(cell)).containsExactly(CELL_MERGED);
            assertThat(cell.troubles().get(0).seen()).contains("TD-1");
        }
    }

    @Test
    void booleansAndPercentagesKeepTheirType() {
        Cell yes = serial(read(s -> row(s, 2, "SB-1").createCell(3).setCellValue(true)));
        assertThat(yes.kind()).isEqualTo(Cell.Kind.BOOLEAN);
        assertThat(yes.text()).isEqualTo("yes");
        Cell percent =
                serial(
                        read(
                                sheet -> {
                                    Row row = row(sheet, 2, "SB-1", "Ann", null, 0.1);
                                    style(row, 3, "0%");
                                }));
        assertThat(percent.text()).isEqualTo("0.1");
    }

    @ParameterizedTest
    @ValueSource(strings = {"(150.00)", "\u2212150", "1.234,56", "1E10", "1-MAR"})
    void textThatLooksLikeANumberStaysText(String text) {
        assertThat(serialOf(text).kind()).isEqualTo(Cell.Kind.TEXT);
        assertThat(serialOf(text).text()).isEqualTo(text);
    }

    @Test
    void aTextLongerThanAnyCellIsNotCarriedOn() {
        String longText = "x".repeat(40_000);
        Cell cell = serialXml("<c r=\"D2\" t=\"inlineStr\"><is><t>" + longText + "</t></is></c>");
        assertThat(codes(cell)).containsExactly(CELL_TOO_LONG);
        assertThat(cell.text()).hasSizeLessThan(100);
    }

    @Test
    void aCellOfAnUnknownStyleOrTypeDoesNotStopItsNeighbours() {
        Cell odd = serialXml("<c r=\"D2\" t=\"zz\"><v>1</v></c>");
        assertThat(codes(odd)).containsExactly(CELL_UNREADABLE);
        Cell style = serialXml("<c r=\"D2\" s=\"4711\"><v>1</v></c>");
        assertThat(style.address()).isEqualTo("D2");
    }

    private Cell serialOf(Object value) {
        return serial(read(sheet -> row(sheet, 2, "SB-1", "Ann", null, value)));
    }

    private Cell serialXml(String xml) {
        return serial(Books.read(folder, "week.xlsx", Books.withSerialCell(xml)));
    }

    private Reading<Sheet> read(Consumer<org.apache.poi.ss.usermodel.Sheet> fill) {
        return Books.read(folder, "week.xlsx", Books.xlsx(fill));
    }

    private static void styled(Row row, int column) {
        style(row, column, "d/m/yyyy");
    }

    private static void style(Row row, int column, String format) {
        Workbook book = row.getSheet().getWorkbook();
        CellStyle style = book.createCellStyle();
        style.setDataFormat(book.createDataFormat().getFormat(format));
        row.getCell(column).setCellStyle(style);
    }
}
