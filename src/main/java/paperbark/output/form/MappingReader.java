package paperbark.output.form;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.output.form.Mapping.Align;
import paperbark.output.form.Mapping.FieldRow;
import paperbark.output.form.Mapping.Stamp;
import paperbark.output.table.SafeCsv;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Reading;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;
import paperbark.value.Parsed;

/**
 * Reads a mapping table: the columns {@code field,value} for a form with fields, {@code
 * page,x_mm,y_mm,width_mm,align,size,value} for one without; other columns do not matter. A first
 * cell that begins with # is a remark, or one of the options {@code #flatten} and {@code #mark}
 * with {@code no} behind it.
 */
final class MappingReader {
    private static final Set<String> PLACES =
            Set.of("page", "x_mm", "y_mm", "width_mm", "align", "size");

    private static final String READ_OFF =
            "Read the number off a copy made with the command form-grid.";
    private static final float NOT_SAID = -1;

    private final String file;
    private final List<FieldRow> fields = new ArrayList<>();
    private final List<Stamp> stamps = new ArrayList<>();
    private final List<Finding> findings;
    private final Map<String, Column> columns = new HashMap<>();
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
                row.cells().values().forEach(this::heading);
            } else {
                Sheet sheet = new Sheet(file, "", 1, List.copyOf(columns.values()), List.of());
                MappingRow cells = new MappingRow(sheet, columns, row, findings);
                if (columns.containsKey("field")) {
                    field(cells);
                } else {
                    stamp(cells);
                }
            }
        }
        return new Mapping(file, fields, stamps, flatten, marked);
    }

    private void heading(Cell cell) {
        String letters = cell.address().replaceAll("[0-9]", "");
        columns.putIfAbsent(
                cell.text().toLowerCase(Locale.ROOT),
                new Column(cell.column(), letters, cell.text()));
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

    private void field(MappingRow row) {
        Optional<String> name = row.text("field").map(SafeCsv::bare);
        Optional<String> value = value(row);
        // A row without a value is one of the list that the admin has not come to yet.
        if (name.isPresent() && value.isPresent()) {
            fields.add(new FieldRow(row.number(), name.get(), value.get()));
        }
    }

    private void stamp(MappingRow row) {
        Optional<String> value = value(row);
        if (value.isEmpty()) {
            return;
        }
        float page = number(row, "page", 1, 1000);
        float x = number(row, "x_mm", NOT_SAID, 3000);
        float y = number(row, "y_mm", NOT_SAID, 3000);
        float width = number(row, "width_mm", 80, 3000);
        float size = number(row, "size", 10, 100);
        Align align =
                row.value("align", FindingCode.TABLE_ROW_WRONG, MappingReader::align)
                        .orElse(Align.LEFT);
        if (row.unread().isEmpty()) {
            stamps.add(new Stamp(row.number(), (int) page, x, y, width, align, size, value.get()));
        }
    }

    private static float number(MappingRow row, String column, float usual, int most) {
        if (usual == NOT_SAID && !row.says(column)) {
            row.refuse(column, FindingCode.TABLE_ROW_WRONG, "The cell is empty.", READ_OFF);
        }
        return row.value(column, FindingCode.TABLE_ROW_WRONG, text -> number(text, most))
                .orElse(usual);
    }

    private static Parsed<Float> number(String text, int most) {
        String plain = text.replace(',', '.');
        return plain.matches("[0-9]{1,4}([.][0-9]{1,3})?") && Float.parseFloat(plain) <= most
                ? Parsed.ok(Float.valueOf(plain))
                : Parsed.bad("The text is no number of the usual size.", READ_OFF);
    }

    private static Parsed<Align> align(String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "left" -> Parsed.ok(Align.LEFT);
            case "right" -> Parsed.ok(Align.RIGHT);
            case "centre", "center", "middle" -> Parsed.ok(Align.CENTRE);
            default ->
                    Parsed.bad(
                            "The word is not left, centre or right.",
                            "Type left, centre or right.");
        };
    }

    /** A line break within a value is written as in a FreeMarker text. */
    private static Optional<String> value(MappingRow row) {
        return row.text("value").map(value -> value.replace("\\n", "\n"));
    }
}
