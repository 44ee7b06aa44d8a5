package paperbark.batch;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.entitlement.Schemes;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.firm.FirmTables;
import paperbark.firm.FirmTablesReader;
import paperbark.job.Answers;
import paperbark.job.BatchCheck;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobReader;
import paperbark.job.JobRows;
import paperbark.job.RowFindings;
import paperbark.job.SplitCells;
import paperbark.rules.Rulebook;
import paperbark.sheet.Column;
import paperbark.sheet.ColumnMap;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.ReadList;
import paperbark.sheet.Reading;
import paperbark.sheet.Sheet;
import paperbark.sheet.SheetReader;

/**
 * Everything a batch begins with, read and checked as far as rows, cells and the batch as a whole
 * go.
 *
 * @param tables the firm's tables
 * @param rulebook the rules
 * @param names what headings mean
 * @param sheet the register's sheet, the first of several
 * @param copied what the marked-up copy is made of
 * @param jobs its jobs in order
 * @param findings what was noticed so far
 * @param namesToAdd names that the tables lack, where those are many
 */
@RecordBuilder
public record Inputs(
        FirmTables tables,
        Rulebook rulebook,
        ColumnNames<Field> names,
        Sheet sheet,
        CopySource copied,
        List<Job> jobs,
        List<Finding> findings,
        Optional<NamesToAdd> namesToAdd) {

    /** Reads all of it; no result when the tables or the register cannot be used. */
    public static Reading<Inputs> read(Request request) {
        Path register = request.register().file();
        if (!Files.isRegularFile(register)) {
            // Tables are looked for beside it, and would be blamed for a slip in its name.
            return Reading.refused(
                    SheetReader.read(register, heading -> false, Optional.empty()).findings());
        }
        List<Finding> findings = new ArrayList<>();
        Optional<FirmTables> tables =
                gather(FirmTablesReader.read(request.firm().tables()), findings);
        Rulebook rulebook = Rulebook.load(request.firm().rules());
        ColumnNames<Field> names =
                HeadingTable.of(Field.values(), "columns", request.firm().tables(), findings);
        Reading<ReadList> reading =
                SheetReader.readAll(
                        request.register().file(),
                        names::knows,
                        request.register().sheet(),
                        names.sheets());
        List<Sheet> sheets = reading.result().map(ReadList::sheets).orElse(List.of());
        List<Map<Field, Column>> columns = new ArrayList<>();
        for (Sheet sheet : sheets) {
            gather(ColumnMap.of(sheet, names), findings).ifPresent(columns::add);
        }
        if (tables.isEmpty() || sheets.isEmpty() || columns.size() < sheets.size()) {
            findings.addAll(
                    sheets.isEmpty() && AnswerBook.isAlone(request.register().file(), reading)
                            ? List.of(AnswerBook.alone(request.register().file()))
                            : reading.findings());
            return Reading.refused(findings.stream().distinct().toList());
        }
        CopySource copied =
                CopySource.of(request.register().file(), reading.result().orElseThrow());
        List<Job> jobs =
                jobs(sheets, columns, new Reader(request, tables.get(), names), reading, findings);
        if (jobs.isEmpty()) {
            findings.add(noJobs(sheets.get(0)));
            return Reading.refused(findings);
        }
        Optional<NamesToAdd> lacking = NamesToAdd.of(jobs, findings);
        lacking.ifPresent(l -> findings.add(l.finding(request.register().name())));
        return Reading.of(
                new Inputs(
                        tables.get(),
                        rulebook,
                        names,
                        sheets.get(0).withoutRows(),
                        copied,
                        jobs,
                        findings.stream().distinct().toList(),
                        lacking),
                findings);
    }

    /** What the rows of a register are read with. */
    private record Reader(Request request, FirmTables tables, ColumnNames<Field> names) {
        JobReader ofJobs() {
            return new JobReader(tables, request.run().today());
        }
    }

    /** The jobs of all sheets; answers behind the register stand in its empty cells. */
    private static List<Job> jobs(
            List<Sheet> sheets,
            List<Map<Field, Column>> columns,
            Reader reader,
            Reading<ReadList> reading,
            List<Finding> findings) {
        Answers answers = AnswerBook.answers(reader.request.register().file());
        boolean oneSheet = sheets.size() == 1;
        JobReader rowsReader = reader.ofJobs();
        List<Job> jobs = new ArrayList<>();
        List<Finding> ofSheets = reading.findings();
        for (int i = 0; i < sheets.size(); i++) {
            SplitCells split = SplitCells.of(sheets.get(i), columns.get(i), reader.tables);
            Answers.Completed full = answers.into(split.sheet(), split.columns(), oneSheet);
            JobRows rows =
                    JobRows.of(
                            full.sheet(),
                            full.columns(),
                            reader.tables.words(),
                            JobReader.isRowEach(reader.names));
            JobReader.Jobs read = rowsReader.read(rows.sheet(), full.columns(), reader.names);
            jobs.addAll(read.jobs());
            findings.addAll(full.findings());
            findings.addAll(rows.findings());
            findings.addAll(read.findings());
            ofSheets = RowFindings.of(ofSheets, rows, full.columns(), read.references());
        }
        findings.addAll(ofSheets);
        findings.addAll(BatchCheck.of(jobs));
        AnswerBook.keepAnswered(answers, oneSheet, jobs, findings);
        findings.addAll(SampleFirm.shown(jobs, reader.tables));
        return jobs;
    }

    /** What a job earns under every scheme, as the firm wants its numbers. */
    public Schemes.Assessed assess(Job job, LocalDate today) {
        return Schemes.assess(job, rulebook, today, tables.firm().money().lowerCount());
    }

    /**
     * The same with other numbers for some jobs.
     *
     * @param numbers the new number by the old
     */
    Inputs renumbered(Map<String, String> numbers) {
        return new Inputs(
                tables,
                rulebook,
                names,
                sheet,
                copied,
                jobs.stream()
                        .map(
                                j ->
                                        j.withReference(
                                                numbers.getOrDefault(j.reference(), j.reference())))
                        .toList(),
                findings.stream()
                        .map(f -> f.job().map(numbers::get).map(f::forJob).orElse(f))
                        .toList(),
                namesToAdd);
    }

    private static <T> Optional<T> gather(Reading<T> reading, List<Finding> findings) {
        findings.addAll(reading.findings());
        return reading.result();
    }

    private static Finding noJobs(Sheet sheet) {
        return Finding.of(
                FindingCode.REGISTER_EMPTY,
                new Place.InFile(sheet.file()),
                "No row of the register is a job with a number.",
                "Look whether this is the right file and sheet.");
    }
}
