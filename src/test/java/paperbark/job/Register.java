package paperbark.job;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.rules.Rulebook;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

/**
 * A register written in a test: first line the headings in our own words, then a line a job. Facts
 * that every job needs are filled in with those of a sound job where the text has no such column.
 */
public final class Register {
    /** The day on which the registers of the tests are read. */
    public static final LocalDate TODAY = LocalDate.of(2026, 11, 23);

    /** The sample firm's tables. */
    public static final FirmTables TABLES =
            FirmTablesReader.read(Path.of("input-samples/tables")).result().orElseThrow();

    /** The shipped rules. */
    public static final Rulebook RULES = Rulebook.load(Optional.empty());

    private static final Map<String, String> SOUND =
            Map.of(
                    "Job", "T-1",
                    "Owner", "Ada Amberwood",
                    "Site street", "4 Teaspoon Lane",
                    "Site suburb", "Ballan",
                    "Site state", "VIC",
                    "Site postcode", "3342",
                    "Maker", "Dunlin",
                    "Model", "D270-A");

    private Register() {}

    /** What reading and checking a register gave. */
    public record Result(List<Job> jobs, List<Finding> findings) {

        /** The codes of all findings, in reading order. */
        public List<String> codes() {
            return findings.stream().map(f -> f.code().code()).toList();
        }

        /** The only finding of a code. */
        public Finding only(String code) {
            List<Finding> all =
                    findings.stream().filter(f -> f.code().code().equals(code)).toList();
            if (all.size() != 1) {
                throw new AssertionError(all.size() + " findings of " + code + " among " + codes());
            }
            return all.get(0);
        }
    }

    static ColumnNames<Field> names(String columnLines) {
        byte[] table = ("field,alias,always\n" + columnLines).getBytes(StandardCharsets.UTF_8);
        Sheet sheet =
                SheetReader.readCsv("columns.csv", table, ColumnNames::isOwnHeading)
                        .result()
                        .orElse(new Sheet("columns.csv", "", 1, List.of(), List.of()));
        return ColumnNames.of(
                Field.values(),
                sheet,
                (row, why) -> {
                    throw new AssertionError(row.number() + ": " + why);
                });
    }

    /** Reads and checks the register as a batch does, without entitlements. */
    public static Result read(String csv) {
        return read("", csv);
    }

    /** The same with a table of columns: lines of field, alias and what every row says. */
    public static Result read(String columnLines, String csv) {
        ColumnNames<Field> names = names(columnLines);
        var sheet =
                SheetReader.readCsv(
                        "week.csv", sound(csv).getBytes(StandardCharsets.UTF_8), names::knows);
        List<Finding> findings = new ArrayList<>(sheet.findings());
        var columns = ColumnMap.of(sheet.result().orElseThrow(), names);
        findings.addAll(columns.findings());
        Map<Field, Column> map = columns.result().orElseThrow();
        SplitCells split = SplitCells.of(sheet.result().orElseThrow(), map, TABLES);
        JobReader.Jobs read =
                new JobReader(TABLES, TODAY).read(split.sheet(), split.columns(), names);
        findings.addAll(read.findings());
        findings.addAll(BatchCheck.of(read.jobs()));
        read.jobs().forEach(job -> findings.addAll(JobCheck.of(job, TABLES, RULES, TODAY)));
        return new Result(read.jobs(), Finding.inOrder(findings));
    }

    /** The one job of a register. */
    public static Job job(String csv) {
        List<Job> jobs = read(csv).jobs();
        if (jobs.size() != 1) {
            throw new AssertionError(jobs.size() + " jobs");
        }
        return jobs.get(0);
    }

    private static String sound(String csv) {
        List<String> lines = csv.strip().lines().toList();
        List<String> headings = new ArrayList<>(List.of(lines.get(0).split(",")));
        Field.values().stream()
                .filter(field -> headings.contains(field.label()))
                .flatMap(field -> field.parts().stream())
                .forEach(part -> headings.add(part.label()));
        List<String> missing =
                SOUND.keySet().stream()
                        .filter(heading -> !headings.contains(heading))
                        .sorted()
                        .toList();
        StringBuilder out = new StringBuilder(lines.get(0));
        missing.forEach(heading -> out.append(',').append(heading));
        for (String line : lines.subList(1, lines.size())) {
            out.append('\n').append(line);
            missing.forEach(heading -> out.append(',').append(SOUND.get(heading)));
        }
        return out.append('\n').toString();
    }
}
