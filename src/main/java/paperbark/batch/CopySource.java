package paperbark.batch;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import paperbark.output.workbook.PlainRows;
import paperbark.output.workbook.PlainRows.PlainRow;
import paperbark.sheet.Cell;
import paperbark.sheet.ReadList;
import paperbark.sheet.Row;

/**
 * What the marked-up copy of a list is made of. Made when the list is read, so that it is read
 * once; it takes far less memory than the cells.
 *
 * @param file the list
 * @param form what kind of file it is
 * @param rows its lines as text, for copies that are made of them
 */
public record CopySource(Path file, ReadList.Form form, PlainRows rows) {

    /** Of a list that was read. */
    public static CopySource of(Path file, ReadList list) {
        String name = file.getFileName().toString();
        return new CopySource(
                file, list.form(), rows(name, list.sheets().get(0).name(), list.lines()));
    }

    /** Lines as text. */
    static PlainRows rows(String file, String sheet, List<Row> lines) {
        Map<String, String> once = new HashMap<>();
        List<PlainRow> rows = new ArrayList<>();
        for (Row row : lines) {
            rows.add(new PlainRow(row.number(), fields(row, once)));
        }
        return new PlainRows(file, sheet, rows);
    }

    /** Thousands of rows repeat most of what they say: each text is kept once. */
    private static List<String> fields(Row row, Map<String, String> once) {
        int last = row.cells().isEmpty() ? 0 : Collections.max(row.cells().keySet());
        String[] fields = new String[Math.max(0, last)];
        Arrays.fill(fields, "");
        for (Map.Entry<Integer, Cell> cell : row.cells().entrySet()) {
            if (cell.getKey() > 0) {
                String text = cell.getValue().text();
                fields[cell.getKey() - 1] = once.computeIfAbsent(text, t -> t);
            }
        }
        return List.of(fields);
    }
}
