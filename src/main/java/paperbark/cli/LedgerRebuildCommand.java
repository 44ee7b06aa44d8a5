package paperbark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.office.LedgerRebuild;
import paperbark.office.Office;
import paperbark.office.OfficeLock;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code ledger-rebuild}: a lost or damaged ledger is made anew. */
@Command(
        name = "ledger-rebuild",
        description = {
            "Makes the ledger of an office folder anew from its published batches, settled advices and copies.",
            "The old one is set aside; one that is sound stays as it is."
        },
        footer = {"", "Example:", "  paperbark ledger-rebuild office"},
        mixinStandardHelpOptions = true)
final class LedgerRebuildCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "FOLDER", description = "The office folder.")
    private Path folder;

    LedgerRebuildCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        try (OfficeLock lock = OfficeLock.take(office, world.clock().instant())) {
            LedgerRebuild.Result result = LedgerRebuild.run(lock);
            if (result.wasSound()) {
                world.out().println("The ledger is sound; nothing was done.");
            } else {
                result.setAside().ifPresent(old -> world.out().println("Set aside: " + old));
                world.out().println("Entries:   " + result.entries());
                world.out().println("Result:    " + office.ledger());
            }
            return Ending.DONE.exitCode();
        } catch (OfficeLock.Busy busy) {
            world.err().println(Ending.BUSY.sentence());
            world.err().println(busy.getMessage());
            return Ending.BUSY.exitCode();
        }
    }
}
