package paperbark.cli;

import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.batch.LedgerDesk;
import paperbark.settle.Quarter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code quarters}: the financial year by quarter, for the activity statement. */
@Command(
        name = "quarters",
        description =
                "Shows the financial year by quarter: sales and GST by day of installation, certificates, money from buyers by day of payment.",
        mixinStandardHelpOptions = true)
final class QuartersCommand implements Callable<Integer> {
    private static final String LINE = "%-18s %5s %16s %14s %7s %7s %15s %15s%n";

    private final Main.World world;

    @Mixin private LedgerOptions options;

    QuartersCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() {
        world.out()
                .printf(
                        LINE,
                        "Quarter",
                        "Jobs",
                        "Sales incl. GST",
                        "GST in them",
                        "STCs",
                        "VEECs",
                        "Expected",
                        "Received");
        for (Quarter q : LedgerDesk.quarters(options.ledger(world), options.day(world))) {
            world.out()
                    .printf(
                            LINE,
                            q.name(),
                            q.jobs(),
                            q.sales(),
                            q.gst(),
                            q.stcs(),
                            q.veecs(),
                            q.expected(),
                            q.received());
        }
        world.out().println();
        world.out()
                .println(
                        "Sales are full prices before certificates, on the day of installation. Your accountant says");
        world.out().println("which day counts for you.");
        return Ending.DONE.exitCode();
    }
}
