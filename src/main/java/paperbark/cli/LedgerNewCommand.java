package paperbark.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.ledger.LedgerPlace;
import paperbark.office.LedgerDesk;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code ledger-new}: an empty ledger. */
@Command(
        name = "ledger-new",
        description = {
            "Makes a new, empty ledger.",
            "Beside the folder of tables and named paperbark.db, or named in ledger.txt there, it is used by",
            "every run on that folder."
        },
        footer = {"", "Example:", "  paperbark ledger-new paperbark.db"},
        mixinStandardHelpOptions = true)
final class LedgerNewCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(
            paramLabel = "LEDGER",
            arity = "0..1",
            description =
                    "A file or jdbc:postgresql://HOST/DATABASE; otherwise the one that ledger.txt in the working directory names, or paperbark.db there.")
    private Optional<String> name = Optional.empty();

    @Option(
            names = "--from",
            paramLabel = "LEDGER",
            description =
                    "Take over everything that another ledger holds, such as a copy of a day.")
    private Optional<String> from = Optional.empty();

    LedgerNewCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() {
        LedgerPlace ledger = LedgerOptions.place(name, world);
        if (from.isPresent()) {
            LedgerDesk.takeOver(LedgerPlace.named(from.get(), world.directory()), ledger);
        } else {
            LedgerDesk.create(ledger, world.clock().instant());
        }
        world.out().println("Result: " + ledger);
        return Ending.DONE.exitCode();
    }
}
