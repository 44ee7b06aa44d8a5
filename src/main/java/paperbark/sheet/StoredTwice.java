package paperbark.sheet;

import java.util.HashSet;
import java.util.Set;
import java.util.TreeSet;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTCell;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTRow;

/** Rows and cells that an .xlsx file holds twice. The library keeps the last of them. */
final class StoredTwice {
    private StoredTwice() {}

    /** Numbers of the rows that the file holds twice, from 1. */
    static Set<Integer> rows(Sheet sheet) {
        if (!(sheet instanceof XSSFSheet xlsx)) {
            return Set.of();
        }
        CTRow[] stored = xlsx.getCTWorksheet().getSheetData().getRowArray();
        Set<Integer> twice = new TreeSet<>();
        if (stored.length > xlsx.getPhysicalNumberOfRows()) {
            Set<Integer> seen = new HashSet<>();
            int number = 0;
            for (CTRow row : stored) {
                number = row.isSetR() ? Math.toIntExact(row.getR()) : number + 1;
                if (!seen.add(number)) {
                    twice.add(number);
                }
            }
        }
        return twice;
    }

    /** Addresses of the cells that the file holds twice in a row. */
    static Set<String> cells(Row row) {
        if (!(row instanceof XSSFRow xlsx)
                || xlsx.getCTRow().sizeOfCArray() <= xlsx.getPhysicalNumberOfCells()) {
            return Set.of();
        }
        Set<String> twice = new HashSet<>();
        Set<String> seen = new HashSet<>();
        for (CTCell cell : xlsx.getCTRow().getCArray()) {
            if (cell.isSetR() && !seen.add(cell.getR())) {
                twice.add(cell.getR());
            }
        }
        return twice;
    }
}
