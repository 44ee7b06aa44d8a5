package paperbark.output.workbook;

import java.util.List;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.output.table.FormulaText;
import paperbark.output.workbook.PlainRows.PlainRow;

/** A workbook made of rows of text; each stands in the row, or on the line, that it had. */
final class PlainBook {
    private static final int NARROWEST = 8;
    private static final int WIDEST = 40;

    private PlainBook() {}

    static XSSFWorkbook of(PlainRows rows) {
        XSSFWorkbook workbook = FreshBook.make();
        workbook.getFontAt(0).setFontName("Arial");
        workbook.getFontAt(0).setFontHeightInPoints((short) 10);
        XSSFSheet sheet =
                workbook.createSheet(
                        WorkbookUtil.createSafeSheetName(
                                rows.sheet().isEmpty()
                                        ? rows.file().replaceFirst("\\.[^.]*$", "")
                                        : rows.sheet(),
                                '-'));
        XSSFCellStyle plain = style(workbook, false);
        XSSFCellStyle quoted = style(workbook, true);
        for (PlainRow record : rows.records()) {
            XSSFRow row = sheet.createRow(record.line() - 1);
            for (int i = 0; i < record.fields().size(); i++) {
                String field = record.fields().get(i);
                if (!field.isEmpty()) {
                    XSSFCell cell = row.createCell(i);
                    cell.setCellStyle(FormulaText.is(field) ? quoted : plain);
                    cell.setCellValue(Texts.stored(field));
                }
            }
        }
        widths(sheet, rows.records());
        return workbook;
    }

    private static XSSFCellStyle style(XSSFWorkbook workbook, boolean quoted) {
        XSSFCellStyle style = workbook.createCellStyle();
        style.setDataFormat(workbook.createDataFormat().getFormat("@"));
        style.setQuotePrefixed(quoted);
        return style;
    }

    private static void widths(XSSFSheet sheet, List<PlainRow> records) {
        int columns = records.stream().mapToInt(r -> r.fields().size()).max().orElse(0);
        for (int i = 0; i < columns; i++) {
            int at = i;
            int longest =
                    records.stream()
                            .filter(r -> r.fields().size() > at)
                            .mapToInt(r -> r.fields().get(at).length())
                            .max()
                            .orElse(0);
            sheet.setColumnWidth(i, Math.max(NARROWEST, Math.min(WIDEST, longest + 2)) * 256);
        }
    }
}
