package paperbark.output.workbook;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.TreeMap;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Workbooks as tests look at them. */
final class Workbooks {
    private Workbooks() {}

    static XSSFWorkbook open(byte[] bytes) {
        try {
            return new XSSFWorkbook(new ByteArrayInputStream(bytes));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The cell under the nearest such heading above the row whose first cell shows the word. */
    static Cell cell(Sheet sheet, String first, String heading) {
        int column = -1;
        for (Row row : sheet) {
            if (column >= 0 && shows(row.getCell(0), first)) {
                return row.getCell(column);
            }
            for (Cell cell : row) {
                if (shows(cell, heading)) {
                    column = cell.getColumnIndex();
                }
            }
        }
        throw new AssertionError(
                "no " + first + " under " + heading + " on " + sheet.getSheetName());
    }

    private static boolean shows(Cell cell, String text) {
        return cell != null
                && cell.getCellType() == CellType.STRING
                && cell.getStringCellValue().equals(text);
    }

    /** The stored results of all formulas by place. */
    static Map<String, Double> formulas(XSSFWorkbook workbook) {
        Map<String, Double> results = new TreeMap<>();
        workbook.forEach(
                sheet ->
                        sheet.forEach(
                                row ->
                                        row.forEach(
                                                cell -> {
                                                    if (cell.getCellType() == CellType.FORMULA) {
                                                        results.put(
                                                                sheet.getSheetName()
                                                                        + "!"
                                                                        + cell.getAddress(),
                                                                cell.getNumericCellValue());
                                                    }
                                                })));
        return results;
    }
}
