package paperbark.job;

import java.util.Map;
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
 */
public record Origin(
        String file, String sheet, int row, Map<Field, Column> columns, boolean from1904) {

    /** A place in a register whose days count from 1900. */
    public Origin(String file, String sheet, int row, Map<Field, Column> columns) {
        this(file, sheet, row, columns, false);
    }

    /** The cell of a field; the whole row where the register has no such column. */
    public Place cell(Field field) {
        Column column = columns.get(field);
        return column == null
                ? new Place.InRow(file, sheet, row)
                : new Place.InCell(file, sheet, row, column.heading(), column.letters() + row);
    }

    /** The row. */
    public Place wholeRow() {
        return new Place.InRow(file, sheet, row);
    }
}
