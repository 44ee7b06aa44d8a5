package paperbark.sheet;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static paperbark.finding.FindingCode.CELL_MERGED;
import static paperbark.finding.FindingCode.CELL_TOO_LONG;
import static paperbark.finding.FindingCode.FILE_ENCRYPTED;
import static paperbark.finding.FindingCode.FILE_MAY_BE_CUT;
import static paperbark.finding.FindingCode.FILE_MISLABELLED;
import static paperbark.finding.FindingCode.FILE_TOO_LARGE;
import static paperbark.finding.FindingCode.FILE_UNREADABLE;
import static paperbark.finding.FindingCode.FORMULA_ERROR;
import static paperbark.finding.FindingCode.FORMULA_EXTERNAL;
import static paperbark.finding.FindingCode.ROWS_HIDDEN;
import static paperbark.finding.FindingCode.SHEET_HIDDEN;
import static paperbark.sheet.Books.codes;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OpenSheetTest {
    private static final String TYPE = "application/vnd.oasis.opendocument.spreadsheet";
    private static final String HEADINGS =
            row(text("Job") + text("Owner") + text("Date") + text("Serial"));

    @TempDir Path folder;

    @Test
    void whatASpreadsheetProgramSavedIsReadCellByCell() {
        Reading<Sheet> reading =
                SheetReader.read(
                        Path.of("src/test/resources/sheet/month.ods"),
                        Books.KNOWN,
                        Optional.empty());
        assertThat(codes(reading)).containsExactly(SHEET_HIDDEN, ROWS_HIDDEN);
        Sheet sheet = Books.sheet(reading);
        assertThat(sheet.name()).isEqualTo("Nov 2026");
        assertThat(sheet.rows()).extracting(Row::number).containsExactly(2, 3, 4, 5, 7, 8);
        Row row = sheet.rows().get(2);
        assertThat(row.cells().get(2).text()).isEqualTo("Ann Example Across");
        assertThat(row.cells().get(3).date()).contains(LocalDate.of(2026, 11, 3));
        assertThat(row.cells().get(4).number()).contains(new BigDecimal("3"));
        assertThat(row.cells().get(5).text()).isEqualTo("0.25");
        assertThat(row.cells().get(6).text()).isEqualTo("4350.1");
        assertThat(row.cells().get(7).text()).isEqualTo("no");
        assertThat(row.cells().get(8).text()).isEqualTo("6");
        assertThat(codes(row.cells().get(9))).containsExactly(FORMULA_ERROR);
    }

    @Test
    void itsCopyIsAWorkbookThatReadsTheSame() {
        Path file = Path.of("src/test/resources/sheet/month.ods");
        byte[] copy = SheetReader.asWorkbook(file).result().orElseThrow();
        assertThat(SheetReader.asWorkbook(file).result().orElseThrow()).isEqualTo(copy);
        List<Row> rows = Books.sheet(SheetReader.read(file, Books.KNOWN, Optional.empty())).rows();
        assertThat(Books.sheet(Books.read(folder, "copy.xlsx", copy)).rows()).isEqualTo(rows);
    }

    @Test
    void repeatedRowsAndCellsAreAllThere() {
        String twice = "<table:table-row table:number-rows-repeated=\"2\">";
        String body =
                HEADINGS
                        + twice
                        + text("SB-1")
                        + text("Ann", "table:number-columns-repeated=\"2\"")
                        + text("TD-1")
                        + "</table:table-row>"
                        + "<table:table-row table:number-rows-repeated=\"1048500\"><table:table-cell/></table:table-row>";
        Sheet sheet = Books.sheet(read(body));
        assertThat(sheet.rows()).hasSize(2);
        assertThat(sheet.rows().get(1).cells().get(3).text()).isEqualTo("Ann");
    }

    /** OpenDocument 1.3 part 3, 19.752: rows are visible, collapsed or filtered. */
    @ParameterizedTest
    @ValueSource(strings = {"filter", "collapse"})
    void rowsThatAreNotSeenAreRead(String visibility) {
        String hidden =
                "<table:table-row table:number-rows-repeated=\"2\" table:visibility=\""
                        + visibility
                        + "\">"
                        + text("SB-2")
                        + text("Ann")
                        + "</table:table-row>";
        Reading<Sheet> reading =
                read(HEADINGS + row(text("SB-1") + text("Ann")) + hidden + row(text("SB-4")));
        assertThat(codes(reading)).containsExactly(ROWS_HIDDEN);
        assertThat(reading.findings().get(0).fact()).startsWith("2 hidden or filtered rows");
        assertThat(reading.findings().get(0).place().rowNumber()).isEqualTo(3);
        assertThat(Books.sheet(reading).rows()).hasSize(4);
    }

    @Test
    void rowsThatASheetBeforeFiltersAreItsOwn() {
        String filtered =
                row(text("Notes"))
                        + "<table:table-row table:visibility=\"filter\">"
                        + text("x")
                        + "</table:table-row></table:table><table:table table:name=\"Jobs\">";
        Reading<Sheet> reading = read(filtered + HEADINGS + row(text("SB-1") + text("Ann")));
        assertThat(codes(reading)).isEmpty();
    }

    @Test
    void onlyTheFirstCellOfAMergedBlockHoldsItsValue() {
        String covered = "<table:covered-table-cell/>";
        Sheet sheet =
                Books.sheet(
                        read(
                                HEADINGS
                                        + row(
                                                text("SB-1")
                                                        + text(
                                                                "Ann",
                                                                "table:number-columns-spanned=\"1\" table:number-rows-spanned=\"2\""))
                                        + row(text("SB-2") + covered)));
        assertThat(sheet.rows().get(0).cells().get(2).text()).isEqualTo("Ann");
        Cell second = sheet.rows().get(1).cells().get(2);
        assertThat(second.isBlank()).isTrue();
        assertThat(codes(second)).containsExactly(CELL_MERGED);
    }

    @Test
    void aValueFromAnotherFileIsNamed() {
        String cell =
                "<table:table-cell table:formula=\"of:=['file:///srv/prices.ods'#$Sheet1.A1]\" office:value-type=\"float\" office:value=\"7\"><text:p>7</text:p></table:table-cell>";
        Cell serial =
                Books.serial(read(HEADINGS + row(text("SB-1") + text("Ann") + text("x") + cell)));
        assertThat(serial.text()).isEqualTo("7");
        assertThat(codes(serial)).containsExactly(FORMULA_EXTERNAL);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<table:table-row table:number-rows-repeated=\"1000000\"><table:table-cell office:value-type=\"string\"><text:p>x</text:p></table:table-cell></table:table-row>",
                "<table:table-row><table:table-cell table:number-columns-repeated=\"16000\" office:value-type=\"string\"><text:p>x</text:p></table:table-cell></table:table-row>",
                "<table:table-row table:number-rows-repeated=\"1000000\"><table:table-cell/></table:table-row><table:table-row><table:table-cell office:value-type=\"string\"><text:p>x</text:p></table:table-cell></table:table-row>"
            })
    void cellsRepeatedAMillionTimesAreRefused(String rows) {
        assertThat(codes(read(HEADINGS + rows))).containsExactly(FILE_TOO_LARGE);
    }

    @Test
    void aCellTooLongForAnySpreadsheetIsNamed() {
        Reading<Sheet> reading = read(HEADINGS + row(text("SB-1") + text("x".repeat(40_000))));
        assertThat(codes(reading)).containsExactly(CELL_TOO_LONG);
        assertThat(reading.findings().get(0).where()).contains("B2");
    }

    @Test
    void whatIsLockedCutOrDamagedIsRefused() {
        Map<String, byte[]> locked = parts(HEADINGS);
        locked.put(
                "META-INF/manifest.xml", "<manifest><encryption-data/></manifest>".getBytes(UTF_8));
        assertThat(codes(Books.read(folder, "week.ods", Books.zip(locked))))
                .containsExactly(FILE_ENCRYPTED);
        byte[] whole = Books.zip(parts(HEADINGS));
        assertThat(codes(Books.read(folder, "week.ods", Arrays.copyOf(whole, whole.length / 2))))
                .containsExactly(FILE_MAY_BE_CUT);
        Map<String, byte[]> entity = parts(HEADINGS);
        entity.put("content.xml", "<!DOCTYPE a [<!ENTITY b \"c\">]><a>&b;</a>".getBytes(UTF_8));
        assertThat(codes(Books.read(folder, "week.ods", Books.zip(entity))))
                .containsExactly(FILE_UNREADABLE);
        assertThat(codes(Books.read(folder, "week.xlsx", whole))).containsExactly(FILE_MISLABELLED);
    }

    /** As LibreOffice saves shortcuts (an empty part) and macros (with a document type). */
    @Test
    void partsThatNobodyReadsMayBeWhatTheyAre() {
        Map<String, byte[]> parts = parts(HEADINGS + row(text("SB-1") + text("Ann")));
        parts.put("Configurations2/accelerator/current.xml", new byte[0]);
        parts.put(
                "Basic/script-lc.xml",
                "<!DOCTYPE library:libraries PUBLIC \"-//OpenOffice.org//DTD OfficeDocument 1.0//EN\" \"libraries.dtd\"><x/>"
                        .getBytes(UTF_8));
        Reading<Sheet> reading = Books.read(folder, "week.ods", Books.zip(parts));
        assertThat(codes(reading)).isEmpty();
        assertThat(Books.sheet(reading).rows()).hasSize(1);
    }

    @Test
    void cellsBeyondTheColumnsThatTheFileDeclaresAreReadToo() {
        String cells = text("SB-1") + text("x", "table:number-columns-repeated=\"6\"");
        assertThat(Books.sheet(read(HEADINGS + row(cells))).rows().get(0).cells()).hasSize(7);
    }

    private Reading<Sheet> read(String rows) {
        return Books.read(folder, "week.ods", Books.zip(parts(rows)));
    }

    static Map<String, byte[]> parts(String rows) {
        String content =
                "<?xml version=\"1.0\" encoding=\"UTF-8\"?><office:document-content office:version=\"1.3\""
                        + " xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
                        + " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
                        + " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\">"
                        + "<office:automatic-styles/><office:body><office:spreadsheet><table:table table:name=\"Week 47\">"
                        + "<table:table-column table:number-columns-repeated=\"5\"/>"
                        + rows
                        + "</table:table></office:spreadsheet></office:body></office:document-content>";
        Map<String, byte[]> parts = new LinkedHashMap<>();
        parts.put("mimetype", TYPE.getBytes(UTF_8));
        parts.put("content.xml", content.getBytes(UTF_8));
        parts.put(
                "META-INF/manifest.xml",
                ("<?xml version=\"1.0\"?><manifest:manifest xmlns:manifest=\"urn:oasis:names:tc:opendocument:xmlns:manifest:1.0\">"
                                + "<manifest:file-entry manifest:full-path=\"/\" manifest:media-type=\""
                                + TYPE
                                + "\"/></manifest:manifest>")
                        .getBytes(UTF_8));
        return parts;
    }

    private static String row(String cells) {
        return "<table:table-row>" + cells + "</table:table-row>";
    }

    private static String text(String text) {
        return text(text, "");
    }

    private static String text(String text, String attribute) {
        return "<table:table-cell office:value-type=\"string\" "
                + attribute
                + "><text:p>"
                + text
                + "</text:p></table:table-cell>";
    }
}
