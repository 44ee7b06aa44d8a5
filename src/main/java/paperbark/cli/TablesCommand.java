package paperbark.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.office.TableDesk;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code tables}: the firm's tables as one workbook, or as a CSV file a table. */
@Command(
        name = "tables",
        description = {
            "Turns the firm's tables into one workbook with a sheet a table, or into CSV files.",
            "Nothing is lost: what a run reads of them stays the same, and the earlier files go to a folder \"before\"."
        },
        footer = {"", "Example: paperbark tables office --to xlsx"},
        mixinStandardHelpOptions = true)
final class TablesCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec spec;

    @Parameters(
            paramLabel = "PATH",
            description = "The folder or workbook of the tables, or the office folder.")
    private Path path;

    @Option(
            names = "--to",
            paramLabel = "FORM",
            required = true,
            description = "xlsx for one workbook, csv for a file a table.")
    private String form;

    TablesCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path tables = tables(world.directory().resolve(path).normalize());
        if (!Files.exists(tables)) {
            throw new ParameterException(spec.commandLine(), "There is no " + tables + ".");
        }
        TableDesk.Result result = TableDesk.convert(tables, form());
        if (Refusal.told(world, result.findings())) {
            return Ending.SETUP.exitCode();
        }
        tell(world, result);
        return Ending.DONE.exitCode();
    }

    /** The tables of an office folder, or the path itself. */
    static Path tables(Path place) {
        Path inOffice = place.resolve("tables");
        Path book = place.resolve("tables.xlsx");
        boolean office = Files.isDirectory(place.resolve("intake"));
        if (Files.isDirectory(inOffice)) {
            return inOffice;
        }
        return office && Files.isRegularFile(book) ? book : place;
    }

    static void tell(Main.World world, TableDesk.Result result) {
        result.aside().ifPresent(before -> world.out().println("Before: " + before));
        Path first = result.made().get(0);
        world.out()
                .println(
                        "Result: "
                                + (result.made().size() == 1
                                        ? first
                                        : first.getParent()
                                                + " ("
                                                + result.made().size()
                                                + " files)"));
    }

    private TableDesk.Form form() {
        return switch (form.toLowerCase(Locale.ROOT)) {
            case "xlsx" -> TableDesk.Form.XLSX;
            case "csv" -> TableDesk.Form.CSV;
            default ->
                    throw new ParameterException(
                            spec.commandLine(), "--to takes xlsx or csv, not \"" + form + "\".");
        };
    }
}
