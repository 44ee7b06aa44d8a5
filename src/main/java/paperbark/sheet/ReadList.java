package paperbark.sheet;

import java.util.List;

/**
 * What was read of a file that holds a list: its sheets, and all that a copy of the first needs, so
 * that nobody reads the file twice.
 *
 * @param form what kind of file it is
 * @param sheets the sheets that were meant, at least one
 * @param lines every line of the first sheet that holds anything, in order: its headings, what
 *     stands above them and what is no record too
 */
public record ReadList(Form form, List<Sheet> sheets, List<Row> lines) {

    /** What a copy of the file can be made of. */
    public enum Form {
        /** A CSV file: its lines. */
        TEXT,
        /** A workbook so large that its cells are never all in memory as a tree: its lines. */
        PASSING,
        /** A workbook: its bytes. */
        WORKBOOK,
        /** An OpenDocument spreadsheet or a workbook with macros: another workbook made of it. */
        CONVERTED
    }

    /** Keeps the lists from being changed. */
    public ReadList {
        sheets = List.copyOf(sheets);
        lines = List.copyOf(lines);
    }
}
