package paperbark.job;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.sheet.Cell;
import paperbark.sheet.CellBuilder;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.value.SchemeName;

/**
 * Lists with a row a certificate: the rows of one job, each with a scheme of its own, make one job
 * where the firm's table of columns says so.
 */
final class RowsOfJob {
    /** What a list wants that has such rows, and whose table of columns does not say so. */
    static final String ROW_EACH =
            "Add the line \"row-a-certificate,,yes\" to the columns table if the list has a row for each scheme.";

    private RowsOfJob() {}

    /**
     * The rows in their order, what a row leaves empty taken from another row of the same job, and
     * its number as the first of them writes it.
     *
     * @param columns the columns by field
     */
    static List<Row> completed(List<Row> rows, Map<Field, Column> columns) {
        Column number = columns.get(Field.JOB);
        if (number == null) {
            return rows;
        }
        Map<String, List<Row>> byJob =
                rows.stream().collect(Collectors.groupingBy(r -> key(r.cell(number).text())));
        return rows.stream()
                .map(row -> completed(row, byJob.get(key(row.cell(number).text())), columns))
                .toList();
    }

    private static Row completed(Row row, List<Row> ofJob, Map<Field, Column> columns) {
        Column number = columns.get(Field.JOB);
        if (ofJob.size() == 1 || row.cell(number).isBlank()) {
            return row;
        }
        Map<Integer, Cell> cells = new HashMap<>(row.cells());
        columns.forEach(
                (field, column) -> {
                    if (row.cell(column).isBlank() && !ofCertificate(field)) {
                        ofJob.stream()
                                .map(other -> other.cell(column))
                                .filter(cell -> !cell.isBlank())
                                .findFirst()
                                .ifPresent(cell -> cells.put(column.index(), cell));
                    }
                });
        String written = ofJob.get(0).cell(number).text();
        cells.computeIfPresent(
                number.index(), (i, own) -> CellBuilder.builder(own).text(written).build());
        return new Row(row.number(), cells);
    }

    /** The rows, by field, of cells that a completed row has from another. */
    static Map<Field, Integer> elsewhere(Row row, Map<Field, Column> columns) {
        Map<Field, Integer> rows = new HashMap<>();
        columns.forEach(
                (field, column) -> {
                    int of = row.cell(column).row();
                    if (of != row.number()) {
                        rows.put(field, of);
                    }
                });
        return rows;
    }

    /** Whether a column speaks of the certificates of its row alone. */
    private static boolean ofCertificate(Field field) {
        return OneScheme.COLUMNS.contains(field);
    }

    /** Job numbers as they are compared. */
    static String key(String reference) {
        return reference.strip().toUpperCase(Locale.ROOT);
    }

    /**
     * One job for the rows that carry its number and claim under different schemes. Where they
     * contradict each other is told; two claims under one scheme stay two jobs.
     */
    static JobReader.Jobs joined(JobReader.Jobs read) {
        Map<String, Job> joined = new LinkedHashMap<>();
        List<Job> jobs = new ArrayList<>();
        // What is wrong with a cell is noticed in every row that it completes.
        List<Finding> findings = new ArrayList<>(new LinkedHashSet<>(read.findings()));
        for (Job job : read.jobs()) {
            Job first = joined.get(key(job.reference()));
            if (first == null) {
                joined.put(key(job.reference()), job);
                jobs.add(job);
            } else if (sharesAScheme(first, job)) {
                jobs.add(job);
            } else {
                Job both = withClaimsOf(first, job);
                joined.put(key(job.reference()), both);
                jobs.set(jobs.indexOf(first), both);
                findings.removeIf(finding -> isRepeated(finding, job, read.findings()));
                findings.addAll(contradictions(first, job));
            }
        }
        return new JobReader.Jobs(jobs, findings, read.references());
    }

    private static boolean sharesAScheme(Job one, Job other) {
        Set<SchemeName> schemes = schemes(one);
        schemes.retainAll(schemes(other));
        return !schemes.isEmpty();
    }

    /** The schemes under which a row claims. */
    static Set<SchemeName> schemes(Job job) {
        Set<SchemeName> schemes = EnumSet.noneOf(SchemeName.class);
        job.claims()
                .forEach(
                        (scheme, claim) -> {
                            if (claim.claimed()) {
                                schemes.add(scheme);
                            }
                        });
        return schemes;
    }

    private static Job withClaimsOf(Job first, Job other) {
        Map<SchemeName, Claim> claims = new EnumMap<>(first.claims());
        List<Field> told = new ArrayList<>();
        for (SchemeName scheme : schemes(other)) {
            claims.put(scheme, other.claim(scheme));
            for (ClaimFact fact : ClaimFact.values()) {
                Field.find(scheme, fact).ifPresent(told::add);
            }
        }
        return first.with(first.origin().with(other.origin(), told), claims, other.unread());
    }

    /** Whether a finding on a later row says what one on another row of the job said already. */
    private static boolean isRepeated(Finding finding, Job later, List<Finding> all) {
        return isOf(finding, later)
                && all.stream()
                        .anyMatch(
                                other ->
                                        other.code() == finding.code()
                                                && other.job().equals(finding.job())
                                                && other.seen().equals(finding.seen())
                                                && other.place()
                                                        .columnHeading()
                                                        .equals(finding.place().columnHeading())
                                                && other.place().rowNumber()
                                                        < finding.place().rowNumber());
    }

    private static boolean isOf(Finding finding, Job job) {
        return finding.place().rowNumber() == job.origin().row()
                && finding.place().sheetName().equals(job.origin().sheet());
    }

    private static List<Finding> contradictions(Job first, Job other) {
        List<Finding> findings = new ArrayList<>();
        for (JobFact fact : JobFact.ALL) {
            boolean differs =
                    !fact.isOfClaim()
                            && fact.in(first).isPresent()
                            && fact.in(other).isPresent()
                            && !fact.in(first).equals(fact.in(other));
            if (differs) {
                Field field = fact.field();
                findings.add(
                        field.narrow(
                                        Finding.of(
                                                FindingCode.ROWS_DISAGREE,
                                                other.origin().cell(field),
                                                "Rows "
                                                        + first.origin().row()
                                                        + " and "
                                                        + other.origin().row()
                                                        + " are of one job and say different things under \""
                                                        + fact.heading(other)
                                                        + "\".",
                                                "Find out which is right and write it into both rows."))
                                .alsoAt(List.of(first.origin().cell(field)))
                                .forJob(first.reference()));
            }
        }
        return findings;
    }
}
