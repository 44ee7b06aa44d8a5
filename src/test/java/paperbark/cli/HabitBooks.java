package paperbark.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Map;
import org.apache.poi.hssf.record.DateWindow1904Record;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Makes workbooks of readable text: {@code == Name} begins a sheet, every other line is a row with
 * {@code |} between its cells. A cell like {@code 16/11/2026} is a real date, {@code 504.00} a
 * number, {@code =A1+1} a formula, and what begins with {@code '} is text in any case;
 * {@code @PINK} before a row colours it.
 */
final class HabitBooks {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d/M/uuuu");

    private final Workbook book;
    private final boolean from1904;
    private final Map<String, CellStyle> styles = new HashMap<>();

    private HabitBooks(Workbook book, boolean from1904) {
        this.book = book;
        this.from1904 = from1904;
    }

    /** An .xlsx. */
    static void xlsx(Path text, Path file) throws IOException {
        try (Workbook book = new XSSFWorkbook()) {
            new HabitBooks(book, false).write(text, file);
        }
    }

    /** An .xls whose days count from 1904. */
    static void xlsFrom1904(Path text, Path file) throws IOException {
        try (HSSFWorkbook book = new HSSFWorkbook()) {
            DateWindow1904Record window =
                    (DateWindow1904Record)
                            book.getInternalWorkbook()
                                    .findFirstRecordBySid(DateWindow1904Record.sid);
            window.setWindowing((short) 1);
            new HabitBooks(book, true).write(text, file);
        }
    }

    private void write(Path text, Path file) throws IOException {
        Sheet sheet = null;
        int row = 0;
        for (String line : Files.readAllLines(text)) {
            if (line.startsWith("== ")) {
                sheet = book.createSheet(line.substring(3));
                row = 0;
            } else {
                fill(sheet.createRow(row++), line);
            }
        }
        book.getCreationHelper().createFormulaEvaluator().evaluateAll();
        try (OutputStream out = Files.newOutputStream(file)) {
            book.write(out);
        }
    }

    private void fill(Row row, String line) {
        String colour = line.startsWith("@") ? line.substring(1, line.indexOf(' ')) : "";
        String[] cells = line.substring(colour.isEmpty() ? 0 : colour.length() + 2).split("\\|");
        for (int i = 0; i < cells.length; i++) {
            String text = cells[i].strip();
            if (!text.isEmpty()) {
                fill(row.createCell(i), text, colour);
            }
        }
    }

    private void fill(Cell cell, String text, String colour) {
        boolean day = text.matches("\\d{1,2}/\\d{1,2}/\\d{4}");
        if (day) {
            LocalDateTime at = LocalDate.parse(text, DAY).atStartOfDay();
            cell.setCellValue(DateUtil.getExcelDate(at, from1904));
        } else if (text.startsWith("=")) {
            cell.setCellFormula(text.substring(1));
        } else if (text.matches("\\d{1,4}|\\d+\\.\\d{2}")) {
            cell.setCellValue(Double.parseDouble(text));
        } else {
            cell.setCellValue(text.replaceFirst("^'", ""));
        }
        if (day || !colour.isEmpty()) {
            cell.setCellStyle(styles.computeIfAbsent(colour + day, k -> style(colour, day)));
        }
    }

    private CellStyle style(String colour, boolean day) {
        CellStyle style = book.createCellStyle();
        if (day) {
            style.setDataFormat(book.createDataFormat().getFormat("d/m/yyyy"));
        }
        if (!colour.isEmpty()) {
            style.setFillForegroundColor(IndexedColors.valueOf(colour).getIndex());
            style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
        }
        return style;
    }
}
