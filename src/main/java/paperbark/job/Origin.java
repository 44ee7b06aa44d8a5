package paperbark.job;

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
 */
public record Origin(
        String file,
        String sheet,
        int row,
        Map<Field, Column> columns,
        boolean from1904,
        Set<Field> supposed) {

    /** Keeps the set from being changed. */
    public Origin {
        supposed = Set.copyOf(supposed);
    }

    /** The same row with the facts of these fields supposed. */
    public Origin supposing(Set<Field> fields) {
        return new Origin(file, sheet, row, columns, from1904, fields);
    }

    /** The cell of a field; the whole row where the register has no such column. */
    public Place cell(Field field) {
        Column column = columns.get(field);
        return column == null ? wholeRow() : column.place(file, sheet, row);
    }

    /**
     * Where a fact comes from, for the working: {@code cell F14}, {@code row 14}, {@code as
     * supposed}.
     */
    public String from(Field field) {
        if (supposed.contains(field)) {
            return "as supposed";
        }
        return columns.containsKey(field) ? "cell " + cell(field).cellAddress() : "row " + row;
    }

    /** The row. */
    public Place wholeRow() {
        return new Place.InRow(file, sheet, row);
    }
}
