package paperbark.job;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;

/**
 * Gives what was noticed about the width of a row to the job in that row, so that a stop holds its
 * papers.
 */
public final class RowFindings {
    private final Map<Integer, Row> rows;
    private final Map<Field, Column> columns;

    private RowFindings(Sheet sheet, Map<Field, Column> columns) {
        this.rows =
                sheet.rows().stream()
                        .collect(Collectors.toMap(Row::number, row -> row, (a, b) -> a));
        this.columns = columns;
    }

    /**
     * The findings of a sheet, those that can hold a job naming it. A row that ends early but has
     * every needed fact is a check: many programs leave out the empty cells at the end.
     */
    public static List<Finding> of(
            List<Finding> findings, Sheet sheet, Map<Field, Column> columns) {
        RowFindings rows = new RowFindings(sheet, columns);
        return findings.stream()
                .map(f -> f.holds().contains(Concern.JOB) ? rows.ofJob(f) : f)
                .toList();
    }

    private Finding ofJob(Finding finding) {
        Optional<Row> row = Optional.ofNullable(rows.get(finding.place().rowNumber()));
        if (row.isEmpty()) {
            return finding;
        }
        boolean harmless = finding.code() == FindingCode.ROW_SHORT && hasAllNeeded(row.get());
        Finding weighed = harmless ? finding.as(Severity.CHECK) : finding;
        String reference = row.get().cell(columns.get(Field.JOB)).text();
        return reference.isEmpty() ? weighed : weighed.forJob(reference);
    }

    private boolean hasAllNeeded(Row row) {
        return Field.values().stream()
                .filter(Field::isNeeded)
                .noneMatch(field -> row.cell(columns.get(field)).isBlank());
    }
}
