package paperbark.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.office.LedgerDesk;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code export}: everything in the ledger as CSV. */
@Command(
        name = "export",
        description = "Writes every table of the ledger as a CSV file; money is in cents.",
        footer = {"", "Example:", "  paperbark export --out ledger-tables"},
        mixinStandardHelpOptions = true)
final class ExportCommand implements Callable<Integer> {
    private final Main.World world;

    @Mixin private LedgerOptions options;

    @Option(
            names = "--out",
            paramLabel = "FOLDER",
            required = true,
            description = "The folder to make; it must not be there yet.")
    private Path out;

    ExportCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path folder = world.directory().resolve(out).normalize();
        if (Files.exists(folder)) {
            world.err().println("There is something named " + folder + " already.");
            world.err().println("Choose another folder.");
            return Ending.USAGE.exitCode();
        }
        LedgerDesk.export(options.ledger(world), folder);
        world.out().println("Result: " + folder);
        return Ending.DONE.exitCode();
    }
}
