package paperbark.output.workbook;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import paperbark.sheet.SheetReader;

/** A hidden sheet with the lists that drop-downs offer, one a column; made when first needed. */
final class ListsSheet {
    private final XSSFWorkbook workbook;
    private final Map<List<String>, String> ranges = new HashMap<>();

    ListsSheet(XSSFWorkbook workbook) {
        this.workbook = workbook;
    }

    /** The range that holds these words, as a formula. */
    String range(List<String> words) {
        return ranges.computeIfAbsent(List.copyOf(words), this::write);
    }

    private String write(List<String> words) {
        int column = ranges.size();
        XSSFSheet sheet = sheet();
        for (int i = 0; i < words.size(); i++) {
            Row row = sheet.getRow(i) == null ? sheet.createRow(i) : sheet.getRow(i);
            row.createCell(column).setCellValue(Texts.stored(words.get(i)));
        }
        String letters = CellReference.convertNumToColString(column);
        return "'%s'!$%s$1:$%s$%d"
                .formatted(SheetReader.LISTS, letters, letters, Math.max(1, words.size()));
    }

    private XSSFSheet sheet() {
        XSSFSheet there = workbook.getSheet(SheetReader.LISTS);
        return there == null ? workbook.createSheet(SheetReader.LISTS) : there;
    }

    /** Hides the sheet, once all others are there. */
    void hide() {
        int index = workbook.getSheetIndex(SheetReader.LISTS);
        if (index >= 0) {
            workbook.setSheetOrder(SheetReader.LISTS, workbook.getNumberOfSheets() - 1);
            workbook.setSheetHidden(workbook.getSheetIndex(SheetReader.LISTS), true);
        }
    }
}
