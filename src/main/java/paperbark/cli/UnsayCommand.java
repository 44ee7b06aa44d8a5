package paperbark.cli;

import java.util.concurrent.Callable;
import paperbark.settle.ByHand;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code unsay}: what was entered by hand was a mistake. */
@Command(
        name = "unsay",
        description = {
            "Takes back what lodged or paid entered by mistake, as if it had never been said.",
            "Both entries stay in the ledger. A job that was withdrawn by mistake is prepared again instead."
        },
        footer = {"", "Example:", "  paperbark unsay advice-12"},
        mixinStandardHelpOptions = true)
final class UnsayCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(
            paramLabel = "ENTRY",
            description = "Its name as told when it was made, e.g. advice-12.")
    private String entry;

    @Mixin private LedgerOptions options;

    UnsayCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        return SaidByHand.tell(world, ByHand.unsay(entry, SaidByHand.order(options, world)), false);
    }
}
