package paperbark.output.workbook;

import java.util.HashMap;
import java.util.Map;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;

/**
 * A workbook in the old format with the values and number formats of another; formulas become what
 * they last gave.
 */
final class ValuesCopy {
    private final HSSFWorkbook copy = new HSSFWorkbook();
    private final Map<String, CellStyle> formats = new HashMap<>();

    private ValuesCopy() {}

    static HSSFWorkbook of(Workbook workbook) {
        ValuesCopy all = new ValuesCopy();
        for (Sheet sheet : workbook) {
            Sheet to = all.copy.createSheet(sheet.getSheetName());
            for (Row row : sheet) {
                Row toRow = to.createRow(row.getRowNum());
                row.forEach(cell -> all.value(cell, toRow.createCell(cell.getColumnIndex())));
            }
        }
        return all.copy;
    }

    private void value(Cell from, Cell to) {
        CellType type =
                from.getCellType() == CellType.FORMULA
                        ? from.getCachedFormulaResultType()
                        : from.getCellType();
        switch (type) {
            case NUMERIC -> to.setCellValue(from.getNumericCellValue());
            case STRING -> to.setCellValue(from.getStringCellValue());
            case BOOLEAN -> to.setCellValue(from.getBooleanCellValue());
            case ERROR -> to.setCellErrorValue(from.getErrorCellValue());
            default -> to.setBlank();
        }
        to.setCellStyle(
                formats.computeIfAbsent(from.getCellStyle().getDataFormatString(), this::style));
    }

    private CellStyle style(String format) {
        CellStyle style = copy.createCellStyle();
        style.setDataFormat(copy.createDataFormat().getFormat(format));
        return style;
    }
}
