package paperbark.job;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import paperbark.finding.Place;
import paperbark.sheet.Column;

/**
 * Where a job was read.
 *
 * @param file the register's file name
 * @param sheet the sheet's name, empty for CSV
 * @param row 1-based row
 * @param columns the columns of the register by field, shared by all its jobs
 * @param from1904 whether a plain number that means a day counts from 1904
 * @param supposed fields whose facts are supposed and do not stand in the register
 * @param rows 1-based row by field, of what stands in another row of the same job
 */
public record Origin(
        String file,
        String sheet,
        int row,
        Map<Field, Column> columns,
        boolean from1904,
        Set<Field> supposed,
        Map<Field, Integer> rows) {

    /** Keeps the collections from being changed. */
    public Origin {
        supposed = Set.copyOf(supposed);
        rows = Map.copyOf(rows);
    }

    /** The usual job, which stands in one row. */
    public Origin(
            String file,
            String sheet,
            int row,
            Map<Field, Column> columns,
            boolean from1904,
            Set<Field> supposed) {
        this(file, sheet, row, columns, from1904, supposed, Map.of());
    }

    /** The same, with what these fields say taken from another row of the job. */
    Origin with(Origin other, Collection<Field> fields) {
        Map<Field, Column> allColumns = new HashMap<>(columns);
        Map<Field, Integer> allRows = new HashMap<>(rows);
        for (Field field : fields) {
            if (other.columns.containsKey(field)) {
                allColumns.put(field, other.columns.get(field));
            }
            allRows.put(field, other.row(field));
        }
        return new Origin(file, sheet, row, Map.copyOf(allColumns), from1904, supposed, allRows);
    }

    /** The same row with the facts of these fields supposed. */
    public Origin supposing(Set<Field> fields) {
        return new Origin(file, sheet, row, columns, from1904, fields, rows);
    }

    /** The cell of a field; the whole row where the register has no such column. */
    public Place cell(Field field) {
        Column column = columns.get(field);
        return column == null
                ? new Place.InRow(file, sheet, row(field))
                : column.place(file, sheet, row(field));
    }

    private int row(Field field) {
        return rows.getOrDefault(field, row);
    }

    /**
     * Where a fact comes from, for the working: {@code cell F14}, {@code row 14}, {@code as
     * supposed}.
     */
    public String from(Field field) {
        if (supposed.contains(field)) {
            return "as supposed";
        }
        return columns.containsKey(field)
                ? "cell " + cell(field).cellAddress()
                : "row " + row(field);
    }

    /** The row. */
    public Place wholeRow() {
        return new Place.InRow(file, sheet, row);
    }
}
