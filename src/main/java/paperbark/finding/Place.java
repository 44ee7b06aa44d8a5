package paperbark.finding;

/**
 * Where a finding is: the smallest place that still tells the truth. Rows, lines and columns count
 * from 1, as the spreadsheet or editor shows them.
 */
public sealed interface Place {

    /** The file's name without folders, as the user knows it. */
    String file();

    /**
     * One cell, e.g. {@code week.xlsx, Week 47, row 14, "Tank serial", F14}. In a CSV file the
     * sheet is empty.
     *
     * @param file the file's name without folders
     * @param sheet the sheet; empty in a CSV file
     * @param row the row, from 1
     * @param heading the column's heading as written
     * @param address e.g. {@code F14}
     */
    record InCell(String file, String sheet, int row, String heading, String address)
            implements Place {}

    /**
     * One row.
     *
     * @param file the file's name without folders
     * @param sheet the sheet; empty in a CSV file
     * @param row the row, from 1
     */
    record InRow(String file, String sheet, int row) implements Place {}

    /**
     * One column, known by its heading.
     *
     * @param file the file's name without folders
     * @param sheet the sheet; empty in a CSV file
     * @param heading the column's heading as written
     * @param address the column's letters, e.g. {@code F}
     */
    record InColumn(String file, String sheet, String heading, String address) implements Place {}

    /**
     * The file as a whole.
     *
     * @param file the file's name without folders
     */
    record InFile(String file) implements Place {}

    /**
     * A row of a rule table or of one of the firm's tables; row 0 is the table as a whole.
     *
     * @param file the table's name
     * @param row the row, from 1, or 0
     */
    record InRule(String file, int row) implements Place {}

    /**
     * A place in a template; line and column 0 are unknown.
     *
     * @param file the template within its folder
     * @param line the line, from 1, or 0
     * @param column the column, from 1, or 0
     */
    record InTemplate(String file, int line, int column) implements Place {}

    /** The row number, or 0 where the place has none. */
    default int rowNumber() {
        if (this instanceof InCell cell) {
            return cell.row();
        }
        if (this instanceof InRow row) {
            return row.row();
        }
        if (this instanceof InRule rule) {
            return rule.row();
        }
        return 0;
    }

    /** The sheet's name, or empty text. */
    default String sheetName() {
        if (this instanceof InCell cell) {
            return cell.sheet();
        }
        if (this instanceof InRow row) {
            return row.sheet();
        }
        if (this instanceof InColumn column) {
            return column.sheet();
        }
        return "";
    }

    /** The column heading, or empty text. */
    default String columnHeading() {
        if (this instanceof InCell cell) {
            return cell.heading();
        }
        if (this instanceof InColumn column) {
            return column.heading();
        }
        return "";
    }

    /** The cell address such as {@code F14}, or empty text. */
    default String cellAddress() {
        if (this instanceof InCell cell) {
            return cell.address();
        }
        if (this instanceof InColumn column) {
            return column.address();
        }
        return "";
    }

    /** The place in words, from the file down: {@code week.xlsx > Week 47 > F14 "Tank serial"}. */
    default String inWords() {
        StringBuilder words = new StringBuilder(file());
        if (!sheetName().isEmpty()) {
            words.append(" > ").append(sheetName());
        }
        if (this instanceof InCell cell) {
            words.append(" > ").append(cell.address()).append(quotedHeading());
        } else if (this instanceof InColumn column) {
            words.append(" > column ").append(column.address()).append(quotedHeading());
        } else if (this instanceof InTemplate template && template.line() > 0) {
            words.append(" > line ")
                    .append(template.line())
                    .append(", column ")
                    .append(template.column());
        } else if (rowNumber() > 0) {
            words.append(" > row ").append(rowNumber());
        }
        return words.toString();
    }

    private String quotedHeading() {
        return columnHeading().isEmpty() ? "" : " \"" + columnHeading() + '"';
    }
}
