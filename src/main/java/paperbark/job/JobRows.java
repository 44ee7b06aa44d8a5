package paperbark.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.Words;
import paperbark.sheet.Cell;
import paperbark.sheet.CellTrouble;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;

/**
 * Which rows of a list are jobs. People write more into a list than jobs: legends, weeks, freight,
 * remarks about other rows.
 *
 * @param sheet the sheet with the rows that are jobs
 * @param others numbers of the rows that are none
 * @param findings what was left out, and why
 */
public record JobRows(Sheet sheet, Set<Integer> others, List<Finding> findings) {
    /** What every job has; a row with fewer than two of them is none. */
    private static final List<Field> MARKS =
            List.of(Field.OWNER_NAME, Field.SITE_STREET, Field.MAKER, Field.MODEL);

    private static final int ENOUGH = 2;

    /** Nobody needs to read these to know which row is meant. */
    private static final Set<Field> NOT_QUOTED =
            Set.of(
                    Field.OWNER_PHONE,
                    Field.OWNER_EMAIL,
                    Field.OWNER_ABN,
                    Field.ACCOUNT_NAME,
                    Field.BSB,
                    Field.ACCOUNT);

    /** Keeps the collections from being changed. */
    public JobRows {
        others = Set.copyOf(others);
        findings = List.copyOf(findings);
    }

    /**
     * Tells the rows of a sheet apart. What holds for every row says nothing of one.
     *
     * @param rowEach whether the list has a row a certificate: a row that tells of certificates and
     *     has the number of a job is a row of that job, whatever else it leaves to the other row
     */
    public static JobRows of(
            Sheet sheet, Map<Field, Column> columns, Words words, boolean rowEach) {
        List<Row> whole =
                sheet.rows().stream()
                        .filter(
                                row ->
                                        marks(row, columns) >= ENOUGH
                                                || isCancelled(row, columns, words))
                        .toList();
        Set<Integer> jobs = whole.stream().map(Row::number).collect(Collectors.toSet());
        Map<String, String> numbers = new HashMap<>();
        whole.forEach(
                row ->
                        number(row, columns)
                                .ifPresent(n -> numbers.putIfAbsent(RowsOfJob.key(n), n)));
        Set<Integer> others = new HashSet<>();
        List<Finding> findings = new ArrayList<>();
        for (Row row : sheet.rows()) {
            Optional<String> job =
                    number(row, columns).map(RowsOfJob::key).map(key -> numbers.get(key));
            if (jobs.contains(row.number())) {
                continue;
            }
            boolean certificates = job.isPresent() && tellsOfCertificates(row, columns);
            if (rowEach && certificates && says(row, columns, Field.JOB)) {
                jobs.add(row.number());
            } else {
                others.add(row.number());
                Finding finding = leftOut(sheet, row, columns, job);
                findings.add(certificates ? stopping(finding, rowEach) : finding);
            }
        }
        List<Row> rows = sheet.rows().stream().filter(r -> jobs.contains(r.number())).toList();
        return new JobRows(sheet.with(rows), others, findings);
    }

    /** The job number; where its cell is merged with one above, as it is shown. */
    private static Optional<String> number(Row row, Map<Field, Column> columns) {
        Optional<Cell> cell = Optional.ofNullable(columns.get(Field.JOB)).map(row::cell);
        return cell.filter(c -> !c.isBlank())
                .map(Cell::text)
                .or(
                        () ->
                                cell.stream()
                                        .flatMap(c -> c.troubles().stream())
                                        .filter(t -> t.code() == FindingCode.CELL_MERGED)
                                        .findFirst()
                                        .flatMap(CellTrouble::seen));
    }

    private static boolean tellsOfCertificates(Row row, Map<Field, Column> columns) {
        return OneScheme.COLUMNS.stream().anyMatch(field -> says(row, columns, field));
    }

    /** A cell of several facts that cannot be taken apart is one mark. */
    private static long marks(Row row, Map<Field, Column> columns) {
        return MARKS.stream()
                .filter(field -> says(row, columns, field))
                .map(field -> row.cell(columns.get(field)))
                .map(cell -> cell.kind() == Cell.Kind.UNUSABLE ? cell.address() : cell)
                .distinct()
                .count();
    }

    private static boolean says(Row row, Map<Field, Column> columns, Field field) {
        Column column = columns.get(field);
        return column != null && row.cell(column).kind() != Cell.Kind.BLANK;
    }

    /** Whoever calls a job off often leaves only its number. */
    private static boolean isCancelled(Row row, Map<Field, Column> columns, Words words) {
        return says(row, columns, Field.JOB)
                && says(row, columns, Field.STAGE)
                && words.read(
                                Field.STAGE.key(),
                                row.cell(columns.get(Field.STAGE)).text(),
                                Stage.values(),
                                Stage::word)
                        .toOptional()
                        .equals(Optional.of(Stage.CANCELLED));
    }

    /** Certificates of a job of the list that are left out hold its claims. */
    private static Finding stopping(Finding finding, boolean rowEach) {
        return Finding.of(
                        finding.code(),
                        finding.place(),
                        finding.fact(),
                        rowEach
                                ? "Unmerge the job number and type it into this row too."
                                : RowsOfJob.ROW_EACH)
                .as(Severity.STOP)
                .holding(Concern.CLAIMS)
                .seeing(finding.seen())
                .forJob(finding.job().orElseThrow());
    }

    private static Finding leftOut(
            Sheet sheet, Row row, Map<Field, Column> columns, Optional<String> job) {
        String quote =
                columns.entrySet().stream()
                        .filter(entry -> !NOT_QUOTED.contains(entry.getKey()))
                        .sorted(Map.Entry.comparingByKey())
                        .map(entry -> row.cell(entry.getValue()).text())
                        .filter(text -> !text.isEmpty())
                        .distinct()
                        .collect(Collectors.joining(" | "));
        String labels =
                MARKS.stream()
                        .filter(field -> !says(row, columns, field))
                        .map(f -> columns.containsKey(f) ? columns.get(f).heading() : f.label())
                        .map(heading -> "\"" + heading + "\"")
                        // Facts that share a cell share its heading.
                        .distinct()
                        .collect(Collectors.joining(", "));
        Finding finding =
                Finding.of(
                                FindingCode.ROW_NO_JOB,
                                sheet.place(row.number()),
                                "The row was left out as no job"
                                        + job.map(", though it has the number of %s"::formatted)
                                                .orElse("")
                                        + ", because it says nothing under "
                                        + labels
                                        + ".",
                                "Fill in at least two of them if the row is a job.")
                        .seeing(quote);
        return job.map(finding::forJob).orElse(finding);
    }
}
