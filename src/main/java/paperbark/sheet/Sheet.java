package paperbark.sheet;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import paperbark.finding.Place;

/**
 * The rows of one sheet or CSV file below its heading row.
 *
 * @param file the file's name without folders
 * @param name the sheet's name; empty for a CSV file
 * @param headingRow 1-based row of the headings
 * @param columns the columns that have a heading, from left to right
 * @param rows the rows that hold anything, in order
 * @param from1904 whether a plain number that means a day counts from 1904
 */
@RecordBuilder
public record Sheet(
        String file,
        String name,
        int headingRow,
        List<Column> columns,
        List<Row> rows,
        boolean from1904) {

    /** Keeps the lists from being changed. */
    public Sheet {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }

    /** A sheet whose days count from 1900. */
    public Sheet(String file, String name, int headingRow, List<Column> columns, List<Row> rows) {
        this(file, name, headingRow, columns, rows, false);
    }

    /** The same sheet with these rows alone. */
    public Sheet with(List<Row> some) {
        return SheetBuilder.builder(this).rows(some).build();
    }

    /** The same without its rows, which take most of the memory. */
    public Sheet withoutRows() {
        return with(List.of());
    }

    /** A row of it. */
    public Place place(int row) {
        return new Place.InRow(file, name, row);
    }

    /** The cell of a column in a row of it. */
    public Place place(Column column, int row) {
        return column.place(file, name, row);
    }
}
