package paperbark.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.disk.Disk;
import paperbark.office.RegisterDesk;
import paperbark.sheet.Reading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code new-register}: an empty list of jobs, ready to be typed into. */
@Command(
        name = "new-register",
        description = {
            "Writes an empty register in the firm's own headings: drop-downs from its tables, days as days,",
            "serials, postcodes and telephone numbers as text."
        },
        footer = {"", "Example:", "  paperbark new-register office/week-49.xlsx"},
        mixinStandardHelpOptions = true)
final class NewRegisterCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "The new file, .xlsx; it must not exist yet.")
    private Path file;

    @Option(
            names = "--tables",
            paramLabel = "PATH",
            description =
                    "Folder or workbook of the firm's tables; otherwise the folder \"tables\" beside the new file.")
    private Optional<Path> tables = Optional.empty();

    NewRegisterCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path register = world.directory().resolve(file).normalize();
        if (!register.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".xlsx")) {
            throw wrong("The new register is a workbook; end its name in .xlsx.");
        }
        if (Files.exists(register)) {
            throw wrong(register + " exists; name a file that does not.");
        }
        Path named =
                tables.map(world.directory()::resolve)
                        .orElse(ReadingOptions.beside(register).resolve("tables"))
                        .normalize();
        Reading<byte[]> made = RegisterDesk.empty(named, world.today(named));
        if (made.result().isEmpty()) {
            Refusal.told(world, made.findings());
            return Ending.SETUP.exitCode();
        }
        Disk.makeFolders(register.getParent());
        Disk.replace(register, made.result().get());
        world.out().println("Result: " + register);
        return Ending.DONE.exitCode();
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
