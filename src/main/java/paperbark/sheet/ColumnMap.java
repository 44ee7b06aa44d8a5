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
        List<String> open = unknown.stream().map(Column::heading).toList();
        names.fields().stream()
                .filter(f -> f.isNeeded() && !columns.containsKey(f))
                .forEach(f -> findings.add(missing(sheet, f, names, open)));
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
        String headings =
                columns.stream()
                        .map(c -> "\"" + c.heading() + "\"")
                        .collect(Collectors.joining(", "));
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
            Sheet sheet, F field, ColumnNames<F> names, List<String> open) {
        Optional<String> near =
                names.aliases(field).stream()
                        .map(
                                alias ->
                                        Nearest.to(
                                                alias,
                                                open.stream().map(ColumnNames::normal).toList()))
                        .flatMap(Optional::stream)
                        .findFirst()
                        .flatMap(
                                normal ->
                                        open.stream()
                                                .filter(o -> ColumnNames.normal(o).equals(normal))
                                                .findFirst());
        String found =
                sheet.columns().stream()
                        .map(c -> "\"" + c.heading() + "\"")
                        .collect(Collectors.joining(", "));
        return Finding.of(
                FindingCode.COLUMN_MISSING,
                sheet.place(sheet.headingRow()),
                "No heading means \"" + field.label() + "\"; found are " + found + ".",
                near.map(
                                n ->
                                        "If \""
                                                + n
                                                + "\" is meant, add the line "
                                                + field.key()
                                                + ","
                                                + n
                                                + " to the "
                                                + names.table()
                                                + ".")
                        .orElse(
                                "Add the column, or add a line to the "
                                        + names.table()
                                        + ": "
                                        + field.key()
                                        + ", a comma and its heading."));
    }
}
