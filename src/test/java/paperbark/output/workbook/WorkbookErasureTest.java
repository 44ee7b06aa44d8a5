package paperbark.output.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.zip.ZipInputStream;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.CreationHelper;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Hyperlink;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkbookErasureTest {
    private static final WorkbookErasure ROWS = new WorkbookErasure("J-1"::equals, Set.of());

    private static byte[] bytes(Workbook workbook) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        workbook.write(out);
        workbook.close();
        return out.toByteArray();
    }

    /** A list with a remark, a link, a day, a sum and a second sheet. */
    private static byte[] list(Workbook workbook) throws IOException {
        CreationHelper make = workbook.getCreationHelper();
        Sheet sheet = workbook.createSheet("Week");
        row(sheet, 0, "Job", "Owner", "Mail");
        row(sheet, 1, "J-1", "Zyxna Quagmire", "zyx@example.com");
        row(sheet, 2, "J-2", "Ada Amberwood", "ada@example.com");
        Comment remark =
                sheet.createDrawingPatriarch().createCellComment(make.createClientAnchor());
        remark.setString(make.createRichTextString("Call Zyxna first"));
        Hyperlink link = make.createHyperlink(HyperlinkType.EMAIL);
        link.setAddress("mailto:zyx@example.com");
        Cell mail = sheet.getRow(1).getCell(2);
        mail.setHyperlink(link);
        mail.setCellComment(remark);
        Cell day = sheet.getRow(2).createCell(3);
        day.setCellValue(java.time.LocalDate.of(2026, 11, 16));
        day.setCellStyle(workbook.createCellStyle());
        day.getCellStyle().setDataFormat(workbook.createDataFormat().getFormat("dd/mm/yyyy"));
        Cell sum = sheet.getRow(2).createCell(4);
        sum.setCellFormula("1+1");
        workbook.getCreationHelper().createFormulaEvaluator().evaluateFormulaCell(sum);
        row(workbook.createSheet("Notes"), 0, "Zyxna Quagmire", "J-1", "");
        return bytes(workbook);
    }

    private static void row(Sheet sheet, int number, String... texts) {
        Row row = sheet.createRow(number);
        for (int i = 0; i < texts.length; i++) {
            row.createCell(i).setCellValue(texts[i]);
        }
    }

    /** Everything in the file that can be read as text, of either width. */
    private static String readable(byte[] file) throws IOException {
        StringBuilder all = new StringBuilder();
        all.append(new String(file, StandardCharsets.ISO_8859_1));
        all.append(new String(file, StandardCharsets.UTF_16LE));
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            while (zip.getNextEntry() != null) {
                all.append(new String(zip.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return all.toString();
    }

    @ParameterizedTest
    @ValueSource(strings = {"xlsx", "xls"})
    void nothingOfTheRowStaysReadableAndTheOthersStay(String kind) throws IOException {
        byte[] before = list(kind.equals("xls") ? new HSSFWorkbook() : new XSSFWorkbook());
        assertThat(readable(before)).contains("Zyxna").contains("zyx@example.com");
        byte[] after = ROWS.of(before).orElseThrow();
        assertThat(readable(after)).doesNotContain("Zyxna", "zyx@example.com", "Quagmire");
        try (Workbook left = WorkbookFactory.create(new ByteArrayInputStream(after))) {
            Sheet sheet = left.getSheet("Week");
            assertThat(sheet.getRow(1).getCell(0).getStringCellValue()).isEqualTo("J-1");
            Row other = sheet.getRow(2);
            assertThat(other.getCell(1).getStringCellValue()).isEqualTo("Ada Amberwood");
            assertThat(new DataFormatter().formatCellValue(other.getCell(3)))
                    .isEqualTo("16/11/2026");
            assertThat(other.getCell(4).getNumericCellValue()).isEqualTo(2);
            assertThat(left.getSheet("Forgotten").getRow(0).getCell(0).getStringCellValue())
                    .startsWith("Jobs were forgotten");
        }
        assertThat(ROWS.of(after)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"xlsx", "xls"})
    void aSecondJobOfTheSameListIsForgottenUnderTheSameNote(String kind) throws IOException {
        byte[] before = list(kind.equals("xls") ? new HSSFWorkbook() : new XSSFWorkbook());
        byte[] first = ROWS.of(before).orElseThrow();
        byte[] second = new WorkbookErasure("J-2"::equals, Set.of()).of(first).orElseThrow();
        assertThat(readable(second)).doesNotContain("Amberwood");
        try (Workbook left = WorkbookFactory.create(new ByteArrayInputStream(second))) {
            assertThat(left.getNumberOfSheets()).isEqualTo(3);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"xlsx", "xls"})
    void onlyBelowNamedHeadingsWhereSomeAreNamed(String kind) throws IOException {
        byte[] before = list(kind.equals("xls") ? new HSSFWorkbook() : new XSSFWorkbook());
        byte[] after = new WorkbookErasure("J-1"::equals, Set.of("Owner")).of(before).orElseThrow();
        try (Workbook left = WorkbookFactory.create(new ByteArrayInputStream(after))) {
            Row row = left.getSheet("Week").getRow(1);
            assertThat(row.getCell(1).toString()).isEmpty();
            assertThat(row.getCell(2).getStringCellValue()).isEqualTo("zyx@example.com");
        }
    }
}
