package paperbark.packaged;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.ss.util.CellReference;

/**
 * A sheet as eyes see it: where something belongs, by its heading and its row.
 *
 * @param sheet its name
 * @param rows the texts of its cells, the headings first
 */
record Cells(String sheet, List<List<String>> rows) {
    static Cells of(Path workbook, String name) throws IOException {
        DataFormatter texts = new DataFormatter();
        List<List<String>> rows = new ArrayList<>();
        try (InputStream in = Files.newInputStream(workbook);
                Workbook book = WorkbookFactory.create(in)) {
            Sheet sheet = book.getSheet(name);
            int width = sheet.getRow(0).getLastCellNum();
            for (int r = 0; r <= sheet.getLastRowNum(); r++) {
                Row row = sheet.getRow(r);
                List<String> cells = new ArrayList<>();
                for (int c = 0; c < width; c++) {
                    cells.add(row == null ? "" : texts.formatCellValue(row.getCell(c)));
                }
                rows.add(cells);
            }
        }
        return new Cells(name, rows);
    }

    /** The first row that holds nothing. */
    int firstEmpty() {
        int row = 0;
        while (row < rows.size() && rows.get(row).stream().anyMatch(t -> !t.isEmpty())) {
            row++;
        }
        return row;
    }

    /** The row with these texts below these headings, given by turns. */
    int row(String... headingsAndTexts) {
        for (int row = 1; row < rows.size(); row++) {
            boolean fits = true;
            for (int i = 0; i < headingsAndTexts.length; i += 2) {
                int column = rows.get(0).indexOf(headingsAndTexts[i]);
                fits &= rows.get(row).get(column).equals(headingsAndTexts[i + 1]);
            }
            if (fits) {
                return row;
            }
        }
        throw new AssertionError(String.join(" ", headingsAndTexts) + " is not in " + rows);
    }

    /** The place of a cell, as it is typed to go there. */
    String at(int row, String heading) {
        int column = rows.get(0).indexOf(heading);
        if (column < 0) {
            throw new AssertionError("no heading " + heading + " in " + rows.get(0));
        }
        return "$'%s'.$%s$%d"
                .formatted(sheet, CellReference.convertNumToColString(column), row + 1);
    }
}
