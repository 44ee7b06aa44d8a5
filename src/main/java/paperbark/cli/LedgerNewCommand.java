package paperbark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.batch.LedgerDesk;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code ledger-new}: an empty ledger. */
@Command(
        name = "ledger-new",
        description = {
            "Makes a new, empty ledger. Beside the folder of tables and named paperbark.db,",
            "it is used by every run on that folder."
        },
        mixinStandardHelpOptions = true)
final class LedgerNewCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(
            paramLabel = "FILE",
            defaultValue = "paperbark.db",
            description = "The file; otherwise paperbark.db in the working directory.")
    private Path file;

    LedgerNewCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() {
        Path ledger = world.directory().resolve(file).normalize();
        LedgerDesk.create(ledger, world.clock().instant());
        world.out().println("Result: " + ledger);
        return Ending.DONE.exitCode();
    }
}
