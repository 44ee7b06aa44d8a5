package paperbark.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
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
            "Nothing is lost: what a run reads of them stays the same, and the earlier files go to a folder \"before\".",
            "Or adds rows to them."
        },
        footer = {"", "Example:", "  paperbark tables office --to xlsx"},
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
            description = "xlsx for one workbook, csv for a file a table.")
    private Optional<String> form = Optional.empty();

    @Option(
            names = "--add",
            paramLabel = "FILE",
            description =
                    "Add the rows of a workbook such as names-to-add.xlsx; a name that a table has stays as it is.")
    private Optional<Path> added = Optional.empty();

    TablesCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path tables = tables(world.directory().resolve(path).normalize());
        if (!Files.exists(tables)) {
            throw new ParameterException(spec.commandLine(), "There is no " + tables + ".");
        }
        if (form.isPresent() == added.isPresent()) {
            throw new ParameterException(
                    spec.commandLine(), "Say what to do: --to xlsx, --to csv or --add FILE.");
        }
        TableDesk.Result result =
                added.isPresent() ? add(tables) : TableDesk.convert(tables, form());
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
        if (result.made().isEmpty()) {
            world.out().println("Nothing was new.");
            return;
        }
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

    private TableDesk.Result add(Path tables) throws IOException {
        Path file = world.directory().resolve(added.get()).normalize();
        if (!Files.isRegularFile(file)) {
            throw new ParameterException(spec.commandLine(), "There is no file " + file + ".");
        }
        return TableDesk.add(tables, file);
    }

    private TableDesk.Form form() {
        return switch (form.get().toLowerCase(Locale.ROOT)) {
            case "xlsx" -> TableDesk.Form.XLSX;
            case "csv" -> TableDesk.Form.CSV;
            default ->
                    throw new ParameterException(
                            spec.commandLine(),
                            "--to takes xlsx or csv, not \"" + form.get() + "\".");
        };
    }
}
