package paperbark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;
import paperbark.sheet.UnnamedColumn;

/**
 * Gives what was noticed about a row as a whole to the job in that row, so that a stop holds its
 * papers.
 */
public final class RowFindings {
    private final Sheet sheet;
    private final Map<Field, Column> columns;
    private final Map<Integer, Row> rows;

    private RowFindings(Sheet sheet, Map<Field, Column> columns) {
        this.sheet = sheet;
        this.columns = columns;
        this.rows =
                sheet.rows().stream()
                        .collect(Collectors.toMap(Row::number, Function.identity(), (a, b) -> b));
    }

    /**
     * The findings of a sheet, those that can hold a job naming it. A row that ends early but has
     * every needed fact is a check: many programs leave out the empty cells at the end.
     */
    public static List<Finding> of(
            List<Finding> findings, Sheet sheet, Map<Field, Column> columns) {
        RowFindings rows = new RowFindings(sheet, columns);
        List<Finding> held = rows.unnamed(findings);
        return Stream.concat(
                        findings.stream().filter(f -> held.isEmpty() || !rows.isUnnamedColumn(f)),
                        held.stream())
                .map(f -> f.stops() && rows.isOfRow(f) ? rows.ofJob(f) : f)
                .toList();
    }

    private boolean isOfRow(Finding finding) {
        return finding.place().rowNumber() > 0 && finding.place().sheetName().equals(sheet.name());
    }

    private boolean isUnnamedColumn(Finding finding) {
        return finding.code() == FindingCode.COLUMN_UNNAMED
                && finding.place().sheetName().equals(sheet.name());
    }

    /**
     * A column of the list whose heading is missing may say that the heater is second-hand or the
     * job cancelled, so it holds the claims of every row that has a value there. A remark beside
     * the list holds nothing.
     */
    private List<Finding> unnamed(List<Finding> findings) {
        if (findings.stream().noneMatch(this::isUnnamedColumn)) {
            return List.of();
        }
        Set<Integer> shifted =
                findings.stream()
                        .filter(f -> f.code() == FindingCode.ROW_LONG && isOfRow(f))
                        .map(f -> f.place().rowNumber())
                        .collect(Collectors.toSet());
        List<Row> whole = sheet.rows().stream().filter(r -> !shifted.contains(r.number())).toList();
        Map<Integer, List<String>> letters = new TreeMap<>();
        for (UnnamedColumn column : UnnamedColumn.of(sheet.columns(), whole)) {
            if (column.ofList()) {
                column.rows()
                        .forEach(
                                row ->
                                        letters.computeIfAbsent(row, r -> new ArrayList<>())
                                                .add(column.letters()));
            }
        }
        return letters.entrySet().stream().map(e -> unnamed(e.getKey(), e.getValue())).toList();
    }

    private Finding unnamed(int row, List<String> letters) {
        boolean one = letters.size() == 1;
        return Finding.of(
                FindingCode.COLUMN_UNNAMED,
                new Place.InCell(sheet.file(), sheet.name(), row, "", letters.get(0) + row),
                (one ? "Column " : "Columns ")
                        + String.join(", ", letters)
                        + (one ? " has" : " have")
                        + " no heading, so what stands there was not read.",
                "Write the heading above the column, or clear what stands there.");
    }

    private Finding ofJob(Finding finding) {
        Row row = rows.get(finding.place().rowNumber());
        if (row == null) {
            return finding;
        }
        boolean harmless = finding.code() == FindingCode.ROW_SHORT && hasAllNeeded(row);
        Finding weighed = harmless ? finding.as(Severity.CHECK) : finding;
        String reference = row.cell(columns.get(Field.JOB)).text();
        return reference.isEmpty() ? weighed : weighed.forJob(reference);
    }

    private boolean hasAllNeeded(Row row) {
        return Field.values().stream()
                .filter(Field::isNeeded)
                .noneMatch(field -> row.cell(columns.get(field)).isBlank());
    }
}
