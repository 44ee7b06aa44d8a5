package paperbark.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.office.ModelDesk;
import paperbark.office.TableDesk;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code listed-models}: a published list of models against the table of products. */
@Command(
        name = "listed-models",
        description = {
            "Compares a published list of listed models, a workbook or CSV with any headings, with the firm's table",
            "of products and says what is new, what changed and what is gone. It changes nothing unless --write",
            "is given. Only models of the firm's own makers count."
        },
        footer = {
            "",
            "Example:",
            "  paperbark listed-models listed.csv --version 54 --day 2026-11-20"
        },
        mixinStandardHelpOptions = true)
final class ListedModelsCommand implements Callable<Integer> {
    private static final int SHOWN = 20;

    private final Main.World world;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "LIST", description = "The list: .xlsx, .xls, .ods or .csv.")
    private Path list;

    @Option(
            names = "--version",
            paramLabel = "TEXT",
            required = true,
            description = "The version of the register that the list is of.")
    private String version;

    @Option(
            names = "--day",
            paramLabel = "DATE",
            required = true,
            converter = ReadingOptions.DayConverter.class,
            description = "The day on which the list was published or fetched.")
    private LocalDate day;

    @Mixin private ListOptions options;

    @Option(
            names = "--write",
            description = "Write the changes into the table; the earlier one is kept aside.")
    private boolean write;

    ListedModelsCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path file = world.directory().resolve(list).normalize();
        if (!Files.isRegularFile(file)) {
            throw new ParameterException(spec.commandLine(), "There is no file " + file + ".");
        }
        Path named = options.tables(world, file.resolveSibling(""));
        ModelDesk.Compared compared =
                ModelDesk.compare(file, options.sheet(), named, version, day.toString());
        Refusal.told(world, compared.findings());
        if (compared.isRefused()) {
            return Ending.REFUSED.exitCode();
        }
        compared.lines().forEach(this::tell);
        if (write) {
            TableDesk.Result result = ModelDesk.write(named, compared);
            if (Refusal.told(world, result.findings())) {
                return Ending.SETUP.exitCode();
            }
            TablesCommand.tell(world, result);
        }
        return Ending.DONE.exitCode();
    }

    private void tell(String what, List<String> names) {
        PrintWriter out = world.out();
        out.println(what + ": " + names.size());
        names.stream().limit(SHOWN).forEach(name -> out.println("  " + name));
        if (names.size() > SHOWN) {
            out.println("  and " + (names.size() - SHOWN) + " more");
        }
    }
}
