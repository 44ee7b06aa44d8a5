package paperbark.firm;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.sheet.Column;
import paperbark.sheet.Sheet;

/** One of the firm's tables with its columns found; gathers what is wrong with its rows. */
final class OpenTable {
    private final Sheet sheet;
    private final Map<String, Column> columns;
    private final List<Finding> findings;

    private OpenTable(Sheet sheet, Map<String, Column> columns, List<Finding> findings) {
        this.sheet = sheet;
        this.columns = columns;
        this.findings = findings;
    }

    /**
     * The table of that shape.
     *
     * @param findings takes what is wrong, also later with the rows
     * @return empty when a needed column is missing or two columns have one meaning
     */
    static Optional<OpenTable> open(TableShape shape, Sheet sheet, List<Finding> findings) {
        Map<String, Column> columns = new HashMap<>();
        boolean usable = true;
        for (Column column : sheet.columns()) {
            String name = shape.ownName(column.heading());
            Column earlier = columns.putIfAbsent(name, column);
            if (earlier != null) {
                findings.add(twice(sheet, column, earlier));
                usable = false;
            } else if (!shape.knows(column.heading())) {
                findings.add(unknown(sheet, column));
            }
        }
        for (String needed : shape.needed()) {
            if (!columns.containsKey(needed)) {
                findings.add(missing(sheet, needed));
                usable = false;
            }
        }
        return usable ? Optional.of(new OpenTable(sheet, columns, findings)) : Optional.empty();
    }

    /** A table with headings alone. */
    static OpenTable empty(Place headings) {
        Sheet none =
                new Sheet(
                        headings.file(),
                        headings.sheetName(),
                        headings.rowNumber(),
                        List.of(),
                        List.of());
        return new OpenTable(none, Map.of(), List.of());
    }

    /** The rows, in order. */
    List<TableRow> rows() {
        List<TableRow> rows = new ArrayList<>();
        sheet.rows().forEach(row -> rows.add(new TableRow(sheet, columns, row, findings)));
        return rows;
    }

    /** The table as a whole. */
    Place place() {
        return sheet.place(sheet.headingRow());
    }

    private static Finding missing(Sheet sheet, String heading) {
        List<String> found = sheet.columns().stream().map(Column::heading).toList();
        return Finding.of(
                FindingCode.COLUMN_MISSING,
                sheet.place(sheet.headingRow()),
                "The table has no column "
                        + heading
                        + "; its headings are "
                        + String.join(", ", found)
                        + ".",
                "Add a column " + heading + ", or give the right column this heading.");
    }

    private static Finding twice(Sheet sheet, Column column, Column earlier) {
        return Finding.of(
                        FindingCode.HEADING_TWICE,
                        place(sheet, column),
                        "Columns "
                                + earlier.letters()
                                + " and "
                                + column.letters()
                                + " have one meaning.",
                        "Remove or rename one of the two columns.")
                .seeing(column.heading())
                .alsoAt(List.of(place(sheet, earlier)));
    }

    private static Finding unknown(Sheet sheet, Column column) {
        return Finding.of(
                FindingCode.COLUMN_UNKNOWN,
                place(sheet, column),
                "The table has no use for this column.",
                "");
    }

    private static Place place(Sheet sheet, Column column) {
        return new Place.InColumn(sheet.file(), sheet.name(), column.heading(), column.letters());
    }
}
