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
    private final Set<Integer> others;
    private final Map<Integer, Row> rows;
    private final Map<Integer, String> references;

    private RowFindings(JobRows told, Map<Field, Column> columns, Map<Integer, String> references) {
        this.references = references;
        this.sheet = told.sheet();
        this.others = told.others();
        this.columns = columns;
        this.rows =
                sheet.rows().stream()
                        .collect(Collectors.toMap(Row::number, Function.identity(), (a, b) -> b));
    }

    /**
     * The findings of a sheet, those that can hold a job naming it. A row that ends early but has
     * every needed fact is a check: many programs leave out the empty cells at the end. How long a
     * row is that is no job matters to nobody.
     *
     * @param references the number of the job in a row, by the row's number
     */
    public static List<Finding> of(
            List<Finding> noticed,
            JobRows told,
            Map<Field, Column> columns,
            Map<Integer, String> references) {
        RowFindings rows = new RowFindings(told, columns, references);
        List<Finding> findings = noticed.stream().filter(f -> !rows.isOfOther(f)).toList();
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

    private boolean isOfOther(Finding finding) {
        boolean ofLength =
                finding.code() == FindingCode.ROW_SHORT || finding.code() == FindingCode.ROW_LONG;
        return ofLength && isOfRow(finding) && others.contains(finding.place().rowNumber());
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
        String reference = references.get(row.number());
        return reference == null ? weighed : weighed.forJob(reference);
    }

    private boolean hasAllNeeded(Row row) {
        return Field.values().stream()
                .filter(Field::isNeeded)
                .filter(columns::containsKey)
                .noneMatch(field -> row.cell(columns.get(field)).isBlank());
    }
}
