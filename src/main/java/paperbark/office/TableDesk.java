package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.disk.Disk;
import paperbark.disk.FileNames;
import paperbark.finding.Finding;
import paperbark.firm.ColumnGuide;
import paperbark.firm.ListedField;
import paperbark.firm.TableGuide;
import paperbark.firm.TableRows;
import paperbark.firm.Words;
import paperbark.job.Field;
import paperbark.output.table.SafeCsv;
import paperbark.output.workbook.TablesWorkbook;
import paperbark.settle.AdviceField;
import paperbark.sheet.Reading;
import paperbark.sheet.TableFiles;

/**
 * Turns the firm's tables from CSV files into a workbook and back, and writes them. What was there
 * before is moved aside and never lost.
 */
public final class TableDesk {
    private static final String BEFORE = "before";
    private static final String FACT_TABLE = "firm";

    private TableDesk() {}

    /**
     * What came of it.
     *
     * @param made the files written
     * @param aside where the earlier ones lie now; empty where there were none
     * @param findings why nothing was done; empty where it was
     */
    public record Result(List<Path> made, Optional<Path> aside, List<Finding> findings) {
        /** Keeps the lists from being changed. */
        public Result {
            made = List.copyOf(made);
            findings = List.copyOf(findings);
        }

        static Result refused(List<Finding> findings) {
            return new Result(List.of(), Optional.empty(), findings);
        }
    }

    /** In what form tables are kept. */
    public enum Form {
        /** A CSV file a table. */
        CSV,
        /** One workbook with a sheet a table. */
        XLSX
    }

    /**
     * Turns all tables of a folder, or of a workbook alone, into the form.
     *
     * @param tables a folder of tables, or a workbook, beside which a folder {@code tables} is made
     * @throws IOException when a file cannot be read or written
     */
    public static Result convert(Path tables, Form to) throws IOException {
        Reading<List<TableRows>> read = TableRows.read(tables);
        if (read.result().isEmpty()) {
            return Result.refused(read.findings());
        }
        Path folder = folder(tables);
        Result result = write(folder, read.result().get(), to, sources(tables));
        Path rules = tables.resolveSibling("rules");
        // Rule tables lie beside a workbook alone, and within a folder of tables.
        if (to == Form.CSV && !folder.equals(tables) && Files.isDirectory(rules)) {
            Disk.move(rules, folder.resolve("rules"));
        }
        return result;
    }

    /**
     * Puts tables in the place of those of the same name, in the form that the firm's tables have.
     *
     * @param changed with all their rows; the earlier files are kept aside
     * @return the reason, and nothing done, where the other tables cannot be read
     * @throws IOException when a file cannot be read or written
     */
    public static Result change(Path tables, List<TableRows> changed) throws IOException {
        Path folder = folder(tables);
        if (TableFiles.workbook(tables).isEmpty()) {
            List<Path> earlier =
                    sources(tables).stream()
                            .filter(
                                    f ->
                                            changed.stream()
                                                    .anyMatch(t -> f.endsWith(t.name() + ".csv")))
                            .toList();
            return write(folder, changed, Form.CSV, earlier);
        }
        Reading<List<TableRows>> read = TableRows.read(tables);
        if (read.result().isEmpty()) {
            return Result.refused(read.findings());
        }
        List<TableRows> all = new ArrayList<>(changed);
        read.result().get().stream()
                .filter(t -> changed.stream().noneMatch(c -> c.name().equals(t.name())))
                .forEach(all::add);
        return write(folder, all, Form.XLSX, sources(tables));
    }

    /**
     * Adds the rows of a workbook whose names the tables lack.
     *
     * @param file a workbook with sheets named like the tables
     * @return nothing made where no row was new
     * @throws IOException when a file cannot be read or written
     */
    public static Result add(Path tables, Path file) throws IOException {
        Reading<List<TableRows>> more = TableRows.read(file);
        Reading<List<TableRows>> now = TableRows.read(tables);
        if (more.result().isEmpty() || now.result().isEmpty()) {
            return Result.refused(more.result().isEmpty() ? more.findings() : now.findings());
        }
        List<TableRows> changed = new ArrayList<>();
        for (TableRows addition : more.result().get()) {
            TableRows before =
                    now.result().get().stream()
                            .filter(t -> t.name().equals(addition.name()))
                            .findFirst()
                            .orElse(TableRows.empty(addition.name()));
            TableRows after = before.joined(addition);
            if (after.rows().size() > before.rows().size()) {
                changed.add(after);
            }
        }
        return changed.isEmpty()
                ? new Result(List.of(), Optional.empty(), List.of())
                : change(tables, changed);
    }

    /** One table as it is; empty where the firm has none, or it cannot be read. */
    public static Optional<TableRows> table(Path tables, String name) {
        return TableRows.read(tables).result().stream()
                .flatMap(List::stream)
                .filter(t -> t.name().equals(name))
                .findFirst();
    }

    private static Path folder(Path tables) {
        return Files.isRegularFile(tables) ? tables.resolveSibling("tables") : tables;
    }

    /** The files that hold the tables now. */
    private static List<Path> sources(Path tables) {
        if (!Files.isDirectory(tables)) {
            return Files.isRegularFile(tables) ? List.of(tables) : List.of();
        }
        return Stream.concat(
                        TableFiles.workbook(tables).stream(),
                        TableGuide.all().stream().map(g -> tables.resolve(g.name() + ".csv")))
                .filter(Files::isRegularFile)
                .toList();
    }

    /**
     * The earlier files are copied aside first and go last, so that nothing is missing at any
     * moment; cut in between, the next reading says which table is there twice.
     */
    private static Result write(Path folder, List<TableRows> tables, Form to, List<Path> earlier)
            throws IOException {
        Disk.makeFolders(folder);
        Optional<Path> aside = Optional.empty();
        if (!earlier.isEmpty()) {
            aside = Optional.of(FileNames.free(folder, BEFORE));
            Disk.makeFolders(aside.get());
            for (Path file : earlier) {
                Disk.write(aside.get().resolve(file.getFileName()), Files.readAllBytes(file));
            }
        }
        List<Path> made = new ArrayList<>();
        if (to == Form.XLSX) {
            made.add(
                    earlier.stream()
                            .filter(f -> f.toString().endsWith(".xlsx"))
                            .findFirst()
                            .orElse(folder.resolve(TableFiles.WORKBOOK)));
            Disk.replace(made.get(0), TablesWorkbook.of(completed(tables), words()));
        } else {
            for (TableRows table : tables) {
                // Headings alone would mean a journal with usual names, or no headings at all.
                if (table.rows().isEmpty() && TableGuide.of(table.name()).isOptional()) {
                    continue;
                }
                Path file = folder.resolve(table.name() + ".csv");
                TableRows said = withoutEmptyFacts(table);
                Disk.replace(
                        file,
                        SafeCsv.of(
                                said.headings(),
                                said.rows().stream().map(SafeCsv::cells).toList()));
                made.add(file);
            }
        }
        for (Path file : earlier) {
            if (!made.contains(file)) {
                Files.delete(file);
            }
        }
        Disk.force(folder);
        return new Result(made, aside, List.of());
    }

    /** In the order of the guide, with an empty sheet for each table that is missing. */
    static List<TableRows> completed(List<TableRows> tables) {
        List<TableRows> all = new ArrayList<>();
        for (TableGuide guide : TableGuide.all()) {
            TableRows table =
                    tables.stream()
                            .filter(t -> t.name().equals(guide.name()))
                            .findFirst()
                            .orElseGet(() -> TableRows.empty(guide.name()));
            for (ColumnGuide fact : guide.facts()) {
                TableRows now = table;
                boolean there =
                        now.rows().stream()
                                .anyMatch(
                                        row ->
                                                now.said(row, "fact")
                                                        .equalsIgnoreCase(fact.heading()));
                table = there ? table : table.plus(Map.of("fact", fact.heading()));
            }
            all.add(table);
        }
        return all;
    }

    /** A fact of the firm that says nothing is there in a workbook only, to be filled in. */
    private static TableRows withoutEmptyFacts(TableRows table) {
        return table.name().equals(FACT_TABLE)
                ? table.with(
                        table.rows().stream()
                                .filter(row -> !table.said(row, "value").isEmpty())
                                .toList())
                : table;
    }

    /** The words that drop-downs of the workbook of tables offer, by the name of their list. */
    static Map<String, List<String>> words() {
        List<String> register =
                Stream.concat(
                                Field.values().stream().map(Field::key),
                                Stream.of("sheet", "two-digit-years", "row-a-certificate"))
                        .toList();
        return Map.of(
                "register",
                register,
                "advice",
                Stream.of(AdviceField.values()).map(AdviceField::key).toList(),
                "listed",
                Stream.of(ListedField.values()).map(ListedField::key).toList(),
                "words",
                List.copyOf(Words.SHIPPED.fields()));
    }
}
