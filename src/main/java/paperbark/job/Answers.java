package paperbark.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.sheet.Cell;
import paperbark.sheet.Column;
import paperbark.sheet.Row;
import paperbark.sheet.Sheet;

/**
 * Facts that a register lacked and that somebody typed on a sheet of their own afterwards. They
 * stand for the empty cells of the register, which itself stays as it is. Only how far a job has
 * come replaces what the register says: it was true when the register was written.
 *
 * @param all in the order of their rows
 */
public record Answers(List<Answer> all) {
    /** The headings of the sheet; the register is named by the SHA-256 of its bytes. */
    public static final List<String> HEADINGS =
            List.of(
                    "Job",
                    "Question",
                    "Answer",
                    "Who knows it",
                    "Field",
                    "Sheet",
                    "Row",
                    "Register");

    /** A list without any. */
    public static final Answers NONE = new Answers(List.of());

    /**
     * One answer.
     *
     * @param job number of the job, for people
     * @param field key of the field
     * @param cell the cell that it was typed into
     * @param sheet the register's sheet; empty for a CSV file
     * @param row 1-based row of the job in the register
     * @param register SHA-256 of the register
     * @param place row of the answer in its own sheet
     */
    public record Answer(
            String job,
            String field,
            Cell cell,
            String sheet,
            int row,
            String register,
            int place) {
        private boolean isForTheSame(Answer other) {
            return field.equals(other.field)
                    && sheet.equals(other.sheet)
                    && row == other.row
                    && register.equals(other.register);
        }
    }

    /**
     * The answers of one job that were typed elsewhere than in a workbook.
     *
     * @param job its number
     * @param typed what was typed, by key of the field
     * @param register SHA-256 of the register
     * @param sheet the register's sheet; empty for a CSV file
     * @param row 1-based row of the job in the register
     */
    public static Answers of(
            String job, Map<String, String> typed, String register, String sheet, int row) {
        List<Answer> answers = new ArrayList<>();
        for (String key : new TreeSet<>(typed.keySet())) {
            Cell cell = Cell.text(1, "A1", typed.get(key));
            answers.add(new Answer(job, key, cell, sheet, row, register, answers.size() + 1));
        }
        return new Answers(answers);
    }

    /** With later answers, which replace these where they are for the same fact of a row. */
    public Answers with(Answers later) {
        List<Answer> both =
                new ArrayList<>(
                        all.stream()
                                .filter(a -> later.all.stream().noneMatch(a::isForTheSame))
                                .toList());
        both.addAll(later.all);
        return new Answers(both);
    }

    /** Keeps the list from being changed. */
    public Answers {
        all = List.copyOf(all);
    }

    /** The answers of a sheet; rows that nobody filled in are none. */
    public static Answers of(Sheet sheet) {
        Map<String, Column> columns = new HashMap<>();
        sheet.columns().forEach(c -> columns.putIfAbsent(c.heading(), c));
        if (!columns.keySet().containsAll(HEADINGS)) {
            return NONE;
        }
        List<Answer> answers = new ArrayList<>();
        for (Row row : sheet.rows()) {
            Cell cell = row.cell(columns.get("Answer"));
            String number = row.cell(columns.get("Row")).text();
            if (!cell.isBlank() && number.matches("[1-9][0-9]{0,6}")) {
                answers.add(
                        new Answer(
                                row.cell(columns.get("Job")).text(),
                                row.cell(columns.get("Field")).text(),
                                cell,
                                row.cell(columns.get("Sheet")).text(),
                                Integer.parseInt(number),
                                row.cell(columns.get("Register")).text(),
                                row.number()));
            }
        }
        return new Answers(answers);
    }

    /** The rows of a sheet of the register that are answered. */
    private Map<Integer, List<Answer>> of(String sheet, boolean only) {
        return all.stream()
                .filter(a -> only || a.sheet().equals(sheet))
                .collect(
                        Collectors.groupingBy(
                                Answer::row, LinkedHashMap::new, Collectors.toList()));
    }

    /** The numbers of those rows. */
    public Set<Integer> rows(String sheet, boolean only) {
        return of(sheet, only).keySet();
    }

    /**
     * A sheet with the answers in the place of its empty cells.
     *
     * @param sheet with columns for fields that the register has no column for
     * @param columns of it
     * @param findings what cells the answers stand in, and answers that could not be used
     */
    public record Completed(Sheet sheet, Map<Field, Column> columns, List<Finding> findings) {}

    /**
     * Puts the answers into a sheet of the register.
     *
     * @param only whether the register has this sheet alone
     */
    public Completed into(Sheet sheet, Map<Field, Column> columns, boolean only) {
        Map<Integer, List<Answer>> byRow = of(sheet.name(), only);
        Map<Field, Column> more = new LinkedHashMap<>(columns);
        List<Finding> findings = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        Set<Integer> seen = new HashSet<>();
        for (Row row : sheet.rows()) {
            seen.add(row.number());
            Map<Integer, Cell> cells = new HashMap<>(row.cells());
            for (Answer answer : byRow.getOrDefault(row.number(), List.of())) {
                put(answer, sheet, row, more, cells).ifPresent(findings::add);
            }
            rows.add(new Row(row.number(), cells));
        }
        byRow.forEach(
                (number, answers) -> {
                    if (!seen.contains(number)) {
                        answers.forEach(
                                a ->
                                        findings.add(
                                                unused(a, sheet, "the register has no such row")));
                    }
                });
        return new Completed(sheet.with(rows), more, findings);
    }

    private static Optional<Finding> put(
            Answer answer,
            Sheet sheet,
            Row row,
            Map<Field, Column> columns,
            Map<Integer, Cell> cells) {
        Optional<Field> field =
                Field.values().stream().filter(f -> f.key().equals(answer.field())).findFirst();
        if (field.isEmpty()) {
            return Optional.of(unused(answer, sheet, "no fact has its name, " + answer.field()));
        }
        Column column = columns.computeIfAbsent(field.get(), f -> added(f, columns));
        Cell there = cells.get(column.index());
        if (there != null && !there.isBlank() && !field.get().equals(Field.STAGE)) {
            return there.text().equals(answer.cell().text())
                    ? Optional.empty()
                    : Optional.of(unused(answer, sheet, "the register's own cell is filled in"));
        }
        Cell given = answer.cell();
        cells.put(
                column.index(),
                new Cell(
                        column.index(),
                        column.letters() + row.number(),
                        given.kind(),
                        given.text(),
                        given.number(),
                        given.date(),
                        given.troubles()));
        return Optional.of(taken(answer, sheet.place(column, row.number()), field.get()));
    }

    /** A column that the register lacks goes by the letters of the job's own cell. */
    private static Column added(Field field, Map<Field, Column> columns) {
        int lowest = columns.values().stream().mapToInt(Column::index).min().orElse(1);
        String letters =
                Optional.ofNullable(columns.get(Field.JOB)).map(Column::letters).orElse("A");
        return new Column(Math.min(0, lowest) - 1, letters, field.label());
    }

    /** Where the change stands in the register's marked copy. */
    private static Finding taken(Answer answer, Place cell, Field field) {
        // Numbers of bank accounts stand on the paper that needs them, and nowhere else.
        boolean secret = field.equals(Field.BSB) || field.equals(Field.ACCOUNT);
        return Finding.of(
                        FindingCode.ANSWER_TAKEN,
                        cell,
                        field.label()
                                + (secret ? "" : " \"" + answer.cell().text() + "\"")
                                + " was typed afterwards, not in this cell of the register.",
                        "")
                .forJob(answer.job());
    }

    private static Finding unused(Answer answer, Sheet sheet, String why) {
        return Finding.of(
                        FindingCode.ANSWER_UNUSED,
                        sheet.place(answer.row()),
                        "The answer \""
                                + answer.field()
                                + "\" for job "
                                + answer.job()
                                + " was not used, because "
                                + why
                                + ".",
                        "Type the fact in the register where the answer is right.")
                .forJob(answer.job());
    }
}
