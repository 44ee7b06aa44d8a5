package paperbark.output.workbook;

import java.util.List;

/**
 * The rows of a register as text.
 *
 * @param file the file's name without folders, as findings name it
 * @param sheet the sheet's name; empty for a CSV file
 * @param records in order, the headings among them
 */
public record PlainRows(String file, String sheet, List<PlainRow> records) {

    /**
     * One record.
     *
     * @param line 1-based line on which it begins, by which findings know it
     * @param fields as read, each kept as text
     */
    public record PlainRow(int line, List<String> fields) {

        /** Keeps the fields from being changed. */
        public PlainRow {
            fields = List.copyOf(fields);
        }
    }

    /** Keeps the records from being changed. */
    public PlainRows {
        records = List.copyOf(records);
    }
}
