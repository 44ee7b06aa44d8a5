package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.output.BatchViews;
import paperbark.output.workbook.PlainRows.PlainRow;
import paperbark.sheet.ColumnMap;

class CheckedRegisterTest {
    private static final List<Finding> FINDINGS = BatchViews.week().findings();

    @TempDir Path folder;

    @Test
    void aProblemCellIsColouredAndCommented() {
        XSSFCell serial = cell(marked(), "H7");
        assertThat(serial.getStringCellValue()).isEqualTo("TD-2231");
        assertThat(serial.getCellStyle().getFillPattern())
                .isEqualTo(FillPatternType.SOLID_FOREGROUND);
        assertThat(serial.getCellComment().getAuthor()).isEqualTo("Paperbark");
        assertThat(serial.getCellComment().getString().getString())
                .isEqualTo(
                        "Stop: serial-twice\nTwo rows of the register name this serial.\nDo: Read"
                                + " the number off both tanks again.");
    }

    @Test
    void aBlankCellCanBeMarkedToo() {
        assertThat(cell(marked(), "J6").getCellComment().getString().getString())
                .startsWith("Check: claim-closing\n");
    }

    @Test
    void whatSomebodyElseRemarkedIsKept() {
        var comment = cell(marked(), "E6").getCellComment();
        assertThat(comment.getAuthor()).isEqualTo("Heron");
        assertThat(comment.getString().getString())
                .startsWith("Rings back after four.\n\nPaperbark:\nCheck: phone-wrong\n");
    }

    @Test
    void aColumnIsMarkedAtItsHeadingInReadableLetters() {
        XSSFCell heading = cell(marked(), "L3");
        assertThat(heading.getCellComment().getString().getString())
                .startsWith("Note: column-unknown");
        assertThat(heading.getCellStyle().getFont().getBold()).isTrue();
        assertThat(heading.getCellStyle().getFont().getXSSFColor().getARGBHex())
                .isEqualTo("FF000000");
    }

    @Test
    void aRowIsMarkedInItsFirstCell() {
        XSSFWorkbook workbook =
                marked(
                        Finding.of(
                                FindingCode.ROW_SHORT,
                                new Place.InRow(BatchViews.REGISTER, BatchViews.SHEET, 8),
                                "The row ends early.",
                                "Fill the row."));
        assertThat(cell(workbook, "A8").getCellComment().getString().getString())
                .contains("row-short");
    }

    @Test
    void severalFindingsOfACellShareItsCommentAndTheGravestGivesTheColour() {
        Place place = BatchViews.cell(7, "Tank serial", "H7");
        XSSFWorkbook workbook =
                marked(
                        Finding.of(
                                FindingCode.SERIAL_UNLIKE_PRODUCT,
                                place,
                                "It does not look like this maker's serials.",
                                "Compare it with the plate."),
                        BatchViews.twice());
        XSSFCell serial = cell(workbook, "H7");
        assertThat(serial.getCellComment().getString().getString())
                .contains("Check: serial-unlike-product")
                .contains("\n\nStop: serial-twice");
        assertThat(fill(serial)).isEqualTo(fill(cell(marked(), "H7")));
    }

    @Test
    void neighbouringCellsCanAllHaveComments() {
        List<Finding> block =
                Stream.of("B5", "C5", "D5", "B4", "C4", "D4", "D6", "C6", "B6")
                        .map(
                                address ->
                                        Finding.of(
                                                FindingCode.FACT_MISSING,
                                                BatchViews.cell(
                                                        address.charAt(1) - '0', "Any", address),
                                                "It is empty.",
                                                "Type it in."))
                        .toList();
        XSSFWorkbook workbook = marked(block.toArray(Finding[]::new));
        for (Finding finding : block) {
            assertThat(cell(workbook, finding.place().cellAddress()).getCellComment().getString())
                    .hasToString("Check: fact-missing\nIt is empty.\nDo: Type it in.");
        }
    }

    @Test
    void severitiesDifferInGreyToo() {
        XSSFWorkbook workbook = marked();
        double stop = grey(fill(cell(workbook, "H7")));
        double check = grey(fill(cell(workbook, "J6")));
        double note = grey(fill(cell(workbook, "L3")));
        assertThat(note - check).isGreaterThan(0.05);
        assertThat(check - stop).isGreaterThan(0.15);
    }

    @Test
    void theWorstOfEachRowStandsBehindItAndLeadsToTheListAndBack() {
        XSSFWorkbook workbook = marked();
        XSSFSheet sheet = workbook.getSheetAt(0);
        XSSFRow row = sheet.getRow(new CellAddress("H7").getRow());
        XSSFCell worst = row.getCell(row.getLastCellNum() - 1);

        assertThat(worst.getStringCellValue()).startsWith("stop: ");
        assertThat(fill(worst)).isEqualTo(fill(cell(workbook, "H7")));
        String there = worst.getHyperlink().getAddress();
        assertThat(there).startsWith("'Findings 2'!A");
        XSSFRow line =
                workbook.getSheet("Findings 2")
                        .getRow(Integer.parseInt(there.substring(there.indexOf("!A") + 2)) - 1);
        assertThat(line.getCell(9).getStringCellValue())
                .isEqualTo(worst.getStringCellValue().substring("stop: ".length()));
        assertThat(line.getCell(7).getHyperlink().getAddress()).endsWith("!H7");
        List<String> headings = new ArrayList<>();
        sheet.forEach(
                r ->
                        r.forEach(
                                c -> {
                                    if (c.toString().equals(ColumnMap.WORST_FINDING)) {
                                        headings.add(c.getAddress().formatAsString());
                                    }
                                }));
        assertThat(headings).hasSize(1);
    }

    @Test
    void everythingElseStaysAsItWas() {
        XSSFWorkbook before = Workbooks.open(Registers.xlsx());
        XSSFWorkbook after = marked();
        List<CellAddress> touched =
                List.of("H7", "J6", "E6", "L3").stream().map(CellAddress::new).toList();
        for (int s = 0; s < before.getNumberOfSheets(); s++) {
            XSSFSheet ours = after.getSheetAt(s);
            assertThat(ours.getSheetName()).isEqualTo(before.getSheetName(s));
            for (Row row : before.getSheetAt(s)) {
                for (Cell cell : row) {
                    XSSFCell same = cell(ours, cell.getAddress());
                    assertThat(text(same)).isEqualTo(text(cell));
                    if (!touched.contains(cell.getAddress())) {
                        assertThat(same.getCellStyle().getCoreXf().xmlText())
                                .isEqualTo(((XSSFCell) cell).getCellStyle().getCoreXf().xmlText());
                    }
                }
            }
            for (int c = 0; c < 12; c++) {
                assertThat(ours.getColumnWidth(c))
                        .isEqualTo(before.getSheetAt(s).getColumnWidth(c));
            }
            assertThat(ours.getMergedRegions()).isEqualTo(before.getSheetAt(s).getMergedRegions());
        }
        assertThat(after.getActiveSheetIndex()).isEqualTo(before.getActiveSheetIndex());
        assertThat(cell(after, "K4").getCellFormula()).isEqualTo("I4/11");
        assertThat(cell(after, "H7").getCellStyle().getDataFormatString()).isEqualTo("General");
    }

    @Test
    void theListLinksToEveryMarkedCell() {
        XSSFWorkbook workbook = marked();
        XSSFSheet list = workbook.getSheet("Findings 2");
        assertThat(list.getHyperlinkList())
                .extracting(link -> link.getLocation())
                .containsExactlyInAnyOrder(
                        "'Week 47'!L3", "'Week 47'!E6", "'Week 47'!J6", "'Week 47'!H7");
        assertThat(list.getPaneInformation().isFreezePane()).isTrue();
        assertThat(list.getCTWorksheet().isSetAutoFilter()).isTrue();
        assertThat(list.getRow(2).getCell(0).getStringCellValue()).isEqualTo("Severity");
        assertThat(list.getLastRowNum() - 2).isEqualTo(FINDINGS.size());
    }

    @Test
    void anXlsKeepsItsValuesFormulasStylesAndRemarks() throws Exception {
        Finding finding =
                Finding.of(
                        FindingCode.SERIAL_TWICE,
                        new Place.InCell("week-47.xls", "Week 47", 7, "Tank serial", "H7"),
                        "Two rows of the register name this serial.",
                        "Read the number off both tanks again.");
        XSSFWorkbook workbook =
                Workbooks.open(
                        CheckedRegister.of("week-47.xls", Registers.xls(), List.of(finding)));
        assertThat(cell(workbook, "H7").getCellComment().getString().getString())
                .contains("serial-twice");
        assertThat(cell(workbook, "K4").getCellFormula()).isEqualTo("I4/11");
        assertThat(cell(workbook, "K4").getNumericCellValue()).isEqualTo(4403 / 11.0);
        assertThat(cell(workbook, "I4").getCellStyle().getDataFormatString())
                .isEqualTo("$#,##0.00");
        assertThat(cell(workbook, "A3").getCellStyle().getFont().getBold()).isTrue();
        assertThat(cell(workbook, "A3").getCellStyle().getFillForegroundColorColor().getARGBHex())
                .isEqualTo("FF000080");
        assertThat(cell(workbook, "E6").getCellComment().getString().getString())
                .isEqualTo("Rings back after four.");
        assertThat(workbook.getSheetAt(0).getColumnWidth(7)).isEqualTo(17 * 256);
    }

    @Test
    void aCsvBecomesTextCellsInTheRowsOfItsLines() {
        PlainRows rows =
                new PlainRows(
                        "week-47.csv",
                        "",
                        List.of(
                                new PlainRow(1, List.of("Job", "Owner", "Postcode")),
                                new PlainRow(2, List.of("SB-1", "=1+1", "0800")),
                                new PlainRow(4, List.of("SB-2", "Fern\nPlaceholder", "3342"))));
        Finding finding =
                Finding.of(
                        FindingCode.POSTCODE_WRONG,
                        new Place.InCell("week-47.csv", "", 4, "Postcode", "C4"),
                        "A postcode has four digits.",
                        "Type the four-digit postcode.");
        XSSFWorkbook workbook = Workbooks.open(CheckedRegister.of(rows, List.of(finding)));
        assertThat(cell(workbook, "B2").getCellType()).isEqualTo(CellType.STRING);
        assertThat(cell(workbook, "B2").getCellStyle().getQuotePrefixed()).isTrue();
        assertThat(cell(workbook, "C2").getStringCellValue()).isEqualTo("0800");
        assertThat(cell(workbook, "C4").getCellComment()).isNotNull();
        assertThat(workbook.getSheet("Findings").getHyperlinkList().get(0).getLocation())
                .isEqualTo("'week-47'!C4");
    }

    @Test
    void twoRunsGiveTheSameBytesEvenWhereTheRegisterHasNoDates() throws Exception {
        byte[] register = Registers.xlsx();
        byte[] first = CheckedRegister.of(BatchViews.REGISTER, register, FINDINGS);
        Thread.sleep(2100); // dates inside count in seconds, zip files in two
        assertThat(CheckedRegister.of(BatchViews.REGISTER, register, FINDINGS)).isEqualTo(first);
    }

    @Test
    void ofThousandsOfCellsAllAreColouredAndListedAndTheGravestHaveAComment() {
        List<Finding> many = new ArrayList<>();
        for (int row = 4; row < 1504; row++) {
            many.add(
                    Finding.of(
                            FindingCode.PHONE_WRONG,
                            BatchViews.cell(row, "Phone", "E" + row),
                            "It has two digits, as row " + row + " says.",
                            "Type the whole number."));
        }
        many.add(
                Finding.of(
                        FindingCode.SERIAL_TWICE,
                        BatchViews.cell(1503, "Tank serial", "H1503"),
                        "Two rows name this serial.",
                        "Read it again."));
        XSSFWorkbook workbook = marked(many.toArray(Finding[]::new));
        assertThat(cell(workbook, "E1503").getCellStyle().getFillPattern())
                .isEqualTo(FillPatternType.SOLID_FOREGROUND);
        assertThat(workbook.getSheetAt(0).getCellComments()).hasSize(1000);
        assertThat(cell(workbook, "H1503").getCellComment()).isNotNull();
        XSSFSheet list = workbook.getSheet("Findings 2");
        assertThat(list.getLastRowNum()).isEqualTo(many.size() + 3);
        assertThat(list.getRow(2).getCell(0).getStringCellValue())
                .isEqualTo("1,501 cells are coloured; only the 1,000 gravest have a comment too.");
    }

    @Test
    void oneCauseInManyRowsColoursEachCellAndIsListedOnce() {
        List<Finding> many = new ArrayList<>();
        for (int row = 4; row < 28; row++) {
            many.add(
                    Finding.of(
                                    FindingCode.MAKER_UNKNOWN,
                                    BatchViews.cell(row, "Maker", "F" + row),
                                    "The makers table has no \"Ternlite\".",
                                    "Correct the name.")
                            .forJob("SB-" + row));
        }
        XSSFWorkbook workbook = marked(many.toArray(Finding[]::new));
        assertThat(cell(workbook, "F4").getCellStyle().getFillPattern())
                .isEqualTo(FillPatternType.SOLID_FOREGROUND);
        assertThat(cell(workbook, "F27").getCellStyle().getFillPattern())
                .isEqualTo(FillPatternType.SOLID_FOREGROUND);
        XSSFSheet list = workbook.getSheet("Findings 2");
        assertThat(list.getLastRowNum()).isEqualTo(3);
        List<String> cells = new ArrayList<>();
        list.getRow(3).forEach(cell -> cells.add(cell.toString()));
        assertThat(cells)
                .contains("rows 4-27")
                .anyMatch(text -> text.startsWith("SB-4, SB-5") && text.endsWith("SB-27"));
    }

    @Test
    void findingsOfOtherFilesAndSheetsMarkNothing() {
        XSSFWorkbook workbook =
                marked(
                        Finding.of(
                                FindingCode.TABLE_ROW_WRONG,
                                new Place.InRule("offers.csv", 6),
                                "The offer ends before it begins.",
                                "Correct the dates."),
                        Finding.of(
                                FindingCode.SERIAL_TWICE,
                                new Place.InCell(
                                        BatchViews.REGISTER, "Elsewhere", 7, "Serial", "H7"),
                                "Two rows name this serial.",
                                "Read it again."));
        assertThat(workbook.getSheetAt(0).getCellComments()).hasSize(1); // the office's own
        assertThat(workbook.getSheet("Findings 2").getLastRowNum()).isEqualTo(4);
    }

    @Test
    void otherFilesAreRefused() {
        byte[] text = "Job,Owner\n".getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> CheckedRegister.of("week.csv", text, List.of()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static XSSFWorkbook marked() {
        return Workbooks.open(CheckedRegister.of(BatchViews.REGISTER, Registers.xlsx(), FINDINGS));
    }

    private static XSSFWorkbook marked(Finding... findings) {
        return Workbooks.open(
                CheckedRegister.of(BatchViews.REGISTER, Registers.xlsx(), List.of(findings)));
    }

    private static XSSFCell cell(XSSFWorkbook workbook, String address) {
        return cell(workbook.getSheetAt(0), new CellAddress(address));
    }

    private static XSSFCell cell(XSSFSheet sheet, CellAddress address) {
        return sheet.getRow(address.getRow()).getCell(address.getColumn());
    }

    private static String text(Cell cell) {
        Sheet sheet = cell.getSheet();
        return sheet.getSheetName() + cell.getCellType() + cell;
    }

    private static byte[] fill(XSSFCell cell) {
        return cell.getCellStyle().getFillForegroundXSSFColor().getRGB();
    }

    private static double grey(byte[] rgb) {
        return ((rgb[0] & 0xFF) * 0.299 + (rgb[1] & 0xFF) * 0.587 + (rgb[2] & 0xFF) * 0.114) / 255;
    }
}
