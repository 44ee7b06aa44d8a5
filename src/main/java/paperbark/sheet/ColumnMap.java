package paperbark.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.value.Nearest;

/** Finds out which column of a list holds which field. */
public final class ColumnMap {
    /** The heading of the column that marked-up copies have more than their registers. */
    public static final String WORST_FINDING = "Worst finding";

    private ColumnMap() {}

    /**
     * The columns by field. Two columns for one field, or none for a field that is needed, refuse
     * the list; columns that mean nothing are one note together.
     */
    public static <F extends ColumnField> Reading<Map<F, Column>> of(
            Sheet sheet, ColumnNames<F> names) {
        Map<F, Column> columns = new LinkedHashMap<>();
        List<Finding> findings = new ArrayList<>();
        List<Column> unknown = new ArrayList<>();
        for (Column column : sheet.columns()) {
            Optional<F> field = names.field(column.heading());
            if (column.heading().equals(WORST_FINDING)) {
                // Somebody goes on working in a marked-up copy; the column is our own.
                continue;
            }
            if (field.isEmpty()) {
                unknown.add(column);
            } else if (columns.containsKey(field.get())) {
                findings.add(
                        twice(sheet, columns.get(field.get()), column, field.get(), names.table()));
            } else {
                columns.put(field.get(), column);
            }
        }
        if (!unknown.isEmpty()) {
            findings.add(unknown(sheet, unknown, names.table()));
        }
        List<F> missing =
                names.fields().stream()
                        .filter(
                                f ->
                                        f.isNeeded()
                                                && !columns.containsKey(f)
                                                && columns.keySet().stream()
                                                        .noneMatch(c -> c.parts().contains(f))
                                                && names.always(f).isEmpty())
                        .toList();
        if (!missing.isEmpty()) {
            List<String> open = unknown.stream().map(Column::heading).toList();
            findings.add(missing(sheet, missing, names, open));
        }
        return findings.stream().anyMatch(Finding::stops)
                ? Reading.refused(findings)
                : Reading.of(Map.copyOf(columns), findings);
    }

    private static Finding twice(
            Sheet sheet, Column first, Column second, ColumnField field, String table) {
        return Finding.of(
                FindingCode.HEADING_TWICE,
                new Place.InColumn(sheet.file(), sheet.name(), second.heading(), second.letters()),
                "Columns "
                        + first.letters()
                        + " \""
                        + first.heading()
                        + "\" and "
                        + second.letters()
                        + " \""
                        + second.heading()
                        + "\" both mean \""
                        + field.label()
                        + "\".",
                "Rename one of the two headings, or take its alias out of the " + table + ".");
    }

    private static Finding unknown(Sheet sheet, List<Column> columns, String table) {
        String headings = quoted(columns.stream().map(Column::heading).toList());
        return Finding.of(
                FindingCode.COLUMN_UNKNOWN,
                new Place.InFile(sheet.file()),
                (columns.size() == 1 ? "The column " : "The columns ")
                        + headings
                        + (columns.size() == 1 ? " is" : " are")
                        + " not used.",
                columns.size() == 1
                        ? "Add a line to the " + table + " if it should be used."
                        : "Add a line to the " + table + " for each that should be used.");
    }

    private static <F extends ColumnField> Finding missing(
            Sheet sheet, List<F> missing, ColumnNames<F> names, List<String> open) {
        String labels = quoted(missing.stream().map(ColumnField::label).toList());
        String found = quoted(sheet.columns().stream().map(Column::heading).toList());
        List<String> lines =
                missing.stream().flatMap(field -> line(field, names, open).stream()).toList();
        F first = missing.get(0);
        return Finding.of(
                FindingCode.COLUMN_MISSING,
                sheet.place(sheet.headingRow()),
                "No heading means " + labels + "; found are " + found + ".",
                lines.isEmpty()
                        ? (missing.size() == 1 ? "Add the column" : "Add the columns")
                                + ", or add a line to the "
                                + names.table()
                                + (missing.size() == 1 ? ": " : " for each, such as ")
                                + first.key()
                                + ", a comma and its heading"
                                + together(missing, names)
                                + "."
                        : (lines.size() == 1 ? "Add the line " : "Add the lines ")
                                + quoted(lines)
                                + " to the "
                                + names.table()
                                + " if that is meant.");
    }

    /** The field for a column that holds several of the missing facts in one cell. */
    private static <F extends ColumnField> String together(List<F> missing, ColumnNames<F> names) {
        return names.fields().stream()
                .filter(field -> field.parts().stream().filter(missing::contains).count() > 1)
                .map(ColumnField::key)
                .reduce((one, other) -> one + " or " + other)
                .map(keys -> ", or with " + keys + " where one cell holds several facts")
                .orElse("");
    }

    /** The line of the table that would name the column, where a heading nearly does. */
    private static <F extends ColumnField> Optional<String> line(
            F field, ColumnNames<F> names, List<String> open) {
        List<String> normal = open.stream().map(ColumnNames::normal).toList();
        return names.aliases(field).stream()
                .flatMap(alias -> Nearest.to(alias, normal).stream())
                .findFirst()
                .map(near -> field.key() + "," + open.get(normal.indexOf(near)));
    }

    private static String quoted(List<String> words) {
        return words.stream().map(w -> "\"" + w + "\"").collect(Collectors.joining(", "));
    }
}
