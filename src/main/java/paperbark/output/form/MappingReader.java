package paperbark.output.form;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.output.form.Mapping.Align;
import paperbark.output.form.Mapping.FieldRow;
import paperbark.output.form.Mapping.Stamp;
import paperbark.output.table.SafeCsv;
import paperbark.sheet.Cell;
import paperbark.sheet.Reading;
import paperbark.sheet.Row;
import paperbark.sheet.SheetReader;

/**
 * Reads a mapping table: the columns {@code field,value} for a form with fields, {@code
 * page,x_mm,y_mm,width_mm,align,size,value} for one without; other columns do not matter. A first
 * cell that begins with # is a remark, or one of the options {@code #flatten} and {@code #mark}
 * with {@code no} behind it.
 */
final class MappingReader {
    private static final Set<String> PLACES =
            Set.of("page", "x_mm", "y_mm", "width_mm", "align", "size");

    private final String file;
    private final List<FieldRow> fields = new ArrayList<>();
    private final List<Stamp> stamps = new ArrayList<>();
    private final List<Finding> findings;
    private final Map<String, Integer> columns = new HashMap<>();
    private boolean flatten = true;
    private boolean marked = true;

    private MappingReader(String file, List<Finding> findings) {
        this.file = file;
        this.findings = findings;
    }

    /**
     * The table of a form.
     *
     * @param findings takes a check for each row that cannot be used
     * @throws UnusableForm when there is no table, or none of its headings is known
     */
    static Mapping read(FormFile form, List<Finding> findings) throws UnusableForm {
        String file = form.tableName();
        Reading<List<Row>> lines =
                SheetReader.csvLines(file, form.table(), MappingReader::isHeading);
        if (form.table().length == 0 || lines.result().isEmpty()) {
            throw UnusableForm.because(
                    form.pdfName(),
                    "The form has no mapping table " + file + " that can be read.",
                    "Begin one with the command form-fields, and keep it as CSV beside the form.");
        }
        return new MappingReader(file, findings).all(lines.result().get());
    }

    private static boolean isHeading(String heading) {
        String name = heading.strip().toLowerCase(Locale.ROOT);
        return name.equals("field") || name.equals("value") || PLACES.contains(name);
    }

    private Mapping all(List<Row> rows) {
        for (Row row : rows) {
            String first = first(row);
            if (first.startsWith("#")) {
                option(row, first);
            } else if (columns.isEmpty()) {
                row.cells()
                        .forEach(
                                (index, cell) ->
                                        columns.putIfAbsent(
                                                cell.text().toLowerCase(Locale.ROOT), index));
            } else if (columns.containsKey("field")) {
                field(row);
            } else {
                stamp(row);
            }
        }
        return new Mapping(file, fields, stamps, flatten, marked);
    }

    private static String first(Row row) {
        Cell cell = row.cells().get(1);
        return cell == null ? "" : cell.text();
    }

    private void option(Row row, String name) {
        Cell cell = row.cells().get(2);
        boolean yes = cell == null || !cell.text().equalsIgnoreCase("no");
        if (name.equals("#flatten")) {
            flatten = yes;
        } else if (name.equals("#mark")) {
            marked = yes;
        }
    }

    private void field(Row row) {
        String name = SafeCsv.bare(text(row, "field"));
        String value = value(row);
        // A row without a value is one of the list that the admin has not come to yet.
        if (!name.isEmpty() && !value.isEmpty()) {
            fields.add(new FieldRow(row.number(), name, value));
        }
    }

    private void stamp(Row row) {
        String value = value(row);
        if (value.isEmpty()) {
            return;
        }
        try {
            Stamp stamp =
                    new Stamp(
                            row.number(),
                            (int) number(row, "page", "1", 1000),
                            number(row, "x_mm", "", 3000),
                            number(row, "y_mm", "", 3000),
                            number(row, "width_mm", "80", 3000),
                            align(text(row, "align")),
                            number(row, "size", "10", 100),
                            value);
            stamps.add(stamp);
        } catch (NumberFormatException e) {
            findings.add(
                    Finding.of(
                            FindingCode.TABLE_ROW_WRONG,
                            new Place.InRule(file, row.number()),
                            e.getMessage(),
                            "Read the numbers off a copy made with the command form-grid."));
        }
    }

    private float number(Row row, String column, String usual, int most) {
        String text = text(row, column);
        String said = text.isEmpty() ? usual : text;
        if (!said.matches("[0-9]{1,4}([.,][0-9]{1,3})?")
                || Float.parseFloat(said.replace(',', '.')) > most) {
            throw new NumberFormatException(
                    "\""
                            + said
                            + "\" in the column "
                            + column
                            + " is no number of the usual size.");
        }
        return Float.parseFloat(said.replace(',', '.'));
    }

    private static Align align(String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "", "left" -> Align.LEFT;
            case "right" -> Align.RIGHT;
            case "centre", "center", "middle" -> Align.CENTRE;
            default ->
                    throw new NumberFormatException(
                            "\"" + text + "\" in the column align is not left, centre or right.");
        };
    }

    /** A line break within a value is written as in a FreeMarker text. */
    private String value(Row row) {
        return text(row, "value").replace("\\n", "\n");
    }

    private String text(Row row, String column) {
        Integer index = columns.get(column);
        Cell cell = index == null ? null : row.cells().get(index);
        return cell == null ? "" : cell.text();
    }
}
