package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import paperbark.disk.Hashes;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.firm.FirmTables;
import paperbark.job.Answers;
import paperbark.job.Answers.Answer;
import paperbark.job.Field;
import paperbark.job.FieldForm;
import paperbark.job.Job;
import paperbark.job.Missing;
import paperbark.output.CaseFile;
import paperbark.output.workbook.AnswerSheet;
import paperbark.output.workbook.AnswerSheet.Question;
import paperbark.output.workbook.PlainRows;
import paperbark.sheet.ColumnNames;
import paperbark.sheet.HeadingTable;
import paperbark.sheet.Reading;
import paperbark.sheet.SheetReader;
import paperbark.sheet.SheetRule;

/**
 * Missing facts as a workbook: asked for beside the packs, and answered in a copy of the register
 * that they complete.
 *
 * <p>A register with answers behind it prepares the answered jobs alone: whatever became of the
 * others since is not touched.
 */
public final class AnswerBook {
    /** The workbook that asks. */
    public static final String NAME = "still-missing.xlsx";

    private AnswerBook() {}

    /**
     * What is asked about a batch, a row a fact: all that its installed jobs lack, and of booked
     * ones what is known before the visit. The rest of these is written on the site sheet.
     */
    static Optional<byte[]> asking(List<CaseFile> cases, Request request, FirmTables tables)
            throws IOException {
        List<Question> questions = new ArrayList<>();
        for (CaseFile file : cases) {
            Job job = file.job();
            Missing.of(job).stream()
                    .filter(m -> job.isInstalled() || m.isKnownBeforehand())
                    .forEach(m -> questions.add(question(job, m, tables)));
        }
        return questions.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        AnswerSheet.asking(questions, Hashes.sha256(request.register().file())));
    }

    private static Question question(Job job, Missing missing, FirmTables tables) {
        Field field = missing.field();
        FieldForm form = FieldForm.of(field, tables);
        return new Question(
                job.reference(),
                field.label() + (job.isInstalled() ? "" : ", before the visit"),
                missing.who(),
                field.key(),
                form.holds(),
                form.choices(),
                job.origin().sheet(),
                job.origin().row());
    }

    /** The answers in a file; none where it has no such sheet. */
    public static Answers answers(Path file) {
        return SheetReader.hasSheet(file, SheetReader.ANSWERS)
                ? SheetReader.read(
                                file, Answers.HEADINGS::contains, Optional.of(SheetReader.ANSWERS))
                        .result()
                        .map(Answers::of)
                        .orElse(Answers.NONE)
                : Answers.NONE;
    }

    /** The answers as a file of their own. */
    public static byte[] of(Answers answers) {
        return AnswerSheet.alone(answers.all());
    }

    /** Whether a file holds answers, or questions, and no list of jobs. */
    public static boolean isAlone(Path file, Path tables) {
        if (!SheetReader.hasSheet(file, SheetReader.ANSWERS)) {
            return false;
        }
        ColumnNames<Field> names =
                HeadingTable.of(Field.values(), "columns", tables, new ArrayList<>());
        return isAlone(
                file, SheetReader.readAll(file, names::knows, Optional.empty(), names.sheets()));
    }

    static boolean isAlone(Path file, Reading<?> read) {
        return read.result().isEmpty() && SheetReader.hasSheet(file, SheetReader.ANSWERS);
    }

    /** What is said of answers whose register is not at hand. */
    static Finding alone(Path file) {
        return alone(
                file,
                "The file holds answers to what was missing, and no list of jobs.",
                "Drop it into the intake of the office that prepared the list.");
    }

    /** The same with the reason that an office knows. */
    public static Finding alone(Path file, String fact, String remedy) {
        return Finding.of(
                FindingCode.ANSWERS_ALONE,
                new Place.InFile(file.getFileName().toString()),
                fact,
                remedy);
    }

    /**
     * A copy of a register with answers behind it. Answers that it has already for the same jobs
     * stay.
     *
     * @param tables the firm's, which say what is a heading of its list
     * @throws IOException when the register cannot be read
     */
    public static byte[] completed(Path register, Answers answers, Path tables) throws IOException {
        Set<Integer> rows = new HashSet<>();
        answers.all().forEach(a -> rows.add(a.row()));
        List<Answer> all = new ArrayList<>();
        answers(register).all().stream().filter(a -> rows.contains(a.row())).forEach(all::add);
        all.addAll(answers.all());
        String name = register.getFileName().toString();
        boolean plain = SheetReader.isPassing(register);
        if (name.toLowerCase(Locale.ROOT).endsWith(".xlsx") && !plain) {
            return AnswerSheet.behind(Files.readAllBytes(register), all);
        }
        ColumnNames<Field> names =
                HeadingTable.of(Field.values(), "columns", tables, new ArrayList<>());
        return SheetReader.csvLines(register, names::knows)
                .result()
                .map(lines -> AnswerSheet.behind(CopySource.rows(name, "", lines), all))
                .orElseGet(() -> AnswerSheet.behind(values(register, names, all), all));
    }

    /** The sheet that the answers are for, of a workbook that may have others like it. */
    private static PlainRows values(Path register, ColumnNames<Field> names, List<Answer> answers) {
        List<String> sheets = answers.stream().map(Answer::sheet).distinct().toList();
        if (sheets.size() != 1) {
            throw new IllegalStateException("answers for several sheets of an old workbook");
        }
        return SheetReader.readAll(
                        register, names::knows, Optional.of(sheets.get(0)), SheetRule.NONE)
                .result()
                .map(list -> CopySource.of(register, list).rows())
                .orElseThrow(() -> new IllegalStateException("nothing to copy"));
    }

    /** Takes all jobs away that are not answered, with what was said of them. */
    static void keepAnswered(
            Answers answers, boolean oneSheet, List<Job> jobs, List<Finding> findings) {
        if (answers.all().isEmpty()) {
            return;
        }
        Set<String> kept = new HashSet<>();
        for (Job job : jobs) {
            if (answers.rows(job.origin().sheet(), oneSheet).contains(job.origin().row())) {
                kept.add(job.reference());
            }
        }
        jobs.removeIf(job -> !kept.contains(job.reference()));
        findings.removeIf(
                f ->
                        f.job().map(job -> !kept.contains(job)).orElse(false)
                                || f.job().isEmpty() && isOfOtherRow(f, answers, oneSheet));
    }

    private static boolean isOfOtherRow(Finding finding, Answers answers, boolean oneSheet) {
        int row = finding.place().rowNumber();
        boolean ofRow =
                finding.place() instanceof Place.InRow || finding.place() instanceof Place.InCell;
        return ofRow
                && row > 1
                && !answers.rows(finding.place().sheetName(), oneSheet).contains(row);
    }
}
