package paperbark.job;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.value.SchemeName;

/**
 * Lists with a row a certificate: the rows of one job, each with a scheme of its own, make one job
 * where the firm's table of columns says so.
 */
final class RowsOfJob {
    private RowsOfJob() {}

    /**
     * The rows in their order, what a row leaves empty taken from a later row of the same job.
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
        return new Row(row.number(), cells);
    }

    /** Whether a column speaks of the certificates of its row alone. */
    private static boolean ofCertificate(Field field) {
        return OneScheme.COLUMNS.contains(field);
    }

    /** Job numbers as they are compared. */
    private static String key(String reference) {
        return reference.strip().toUpperCase(Locale.ROOT);
    }

    /**
     * One job for the rows that carry its number and claim under different schemes. Where they
     * contradict each other is told; two claims under one scheme stay two jobs.
     */
    static JobReader.Jobs joined(JobReader.Jobs read) {
        Map<String, Job> joined = new LinkedHashMap<>();
        List<Job> jobs = new ArrayList<>();
        List<Finding> findings = new ArrayList<>(read.findings());
        Map<Integer, String> references = new HashMap<>(read.references());
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
                findings.replaceAll(
                        f -> f.job().isPresent() && isOf(f, job) ? f.forJob(first.reference()) : f);
                references.put(job.origin().row(), first.reference());
                findings.addAll(contradictions(first, job));
            }
        }
        return new JobReader.Jobs(jobs, findings, references);
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
        schemes(other).forEach(scheme -> claims.put(scheme, other.claim(scheme)));
        return first.with(claims, other.unread());
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
