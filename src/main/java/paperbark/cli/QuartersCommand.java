package paperbark.cli;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.stream.Collectors;
import paperbark.batch.Ending;
import paperbark.settle.Quarter;
import paperbark.value.Days;
import paperbark.value.SchemeName;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code quarters}: the financial year by quarter, for the activity statement. */
@Command(
        name = "quarters",
        description =
                "Shows the financial year by quarter: sales and GST by day of installation, certificates, money from buyers by day of payment.",
        footer = {"", "Example:", "  paperbark quarters --year 2027"},
        mixinStandardHelpOptions = true)
final class QuartersCommand implements Callable<Integer> {
    private static final String LINE = "%-16s %5s %15s %14s %s %14s %14s %12s%n";

    private static final int FIRST = 2001;
    private static final int LAST = 2100;

    private final Main.World world;

    @Spec private CommandSpec command;

    @Mixin private LedgerOptions options;

    @Option(
            names = "--year",
            paramLabel = "YEAR",
            description =
                    "The year in which the financial year ends, e.g. 2027; otherwise that of the day.")
    private Optional<Integer> year = Optional.empty();

    QuartersCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        LocalDate day = options.day(world);
        int ending = year.orElseGet(() -> Quarter.yearOf(day));
        if (ending < FIRST || ending > LAST) {
            throw new ParameterException(
                    command.commandLine(), "--year takes a year such as 2027, not " + ending + ".");
        }
        world.out()
                .printf(
                        LINE,
                        "Quarter",
                        "Jobs",
                        "G1 sales",
                        "1A in them",
                        aColumnEach(scheme -> scheme.word() + "s"),
                        "Expected",
                        "Received",
                        "1A on those");
        for (Quarter q : options.read(world, ledger -> Quarter.ofYear(ledger, ending, day))) {
            world.out()
                    .printf(
                            LINE,
                            q.name(),
                            q.jobs(),
                            q.sales(),
                            q.gst(),
                            aColumnEach(q.certificates()::get),
                            q.expected(),
                            q.received(),
                            q.gstBeyond());
        }
        world.out().println();
        world.out()
                .println(
                        "G1 and 1A are labels of the activity statement. Sales are full prices before certificates, on the day");
        world.out()
                .println(
                        "of installation; 1A on those is for what buyers paid beyond discounts, when it came. Your accountant says");
        world.out().println("which day counts for you.");
        world.out()
                .println("What was entered or came after " + Days.show(day) + " is not counted.");
        return Ending.DONE.exitCode();
    }

    private static String aColumnEach(Function<SchemeName, Object> cell) {
        return Arrays.stream(SchemeName.values())
                .map(scheme -> "%6s".formatted(cell.apply(scheme)))
                .collect(Collectors.joining(" "));
    }
}
