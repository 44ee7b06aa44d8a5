package paperbark.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.settle.ByHand;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code lodged}: claims were lodged, and no advice tells it. */
@Command(
        name = "lodged",
        description = {
            "Enters that claims were lodged, where no buyer's advice tells it.",
            "All of them are entered, or none. A failed claim that is lodged again is expected again."
        },
        footer = {"", "Example:", "  paperbark lodged SB-1101 SB-1102"},
        mixinStandardHelpOptions = true)
final class LodgedCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(
            paramLabel = "JOB",
            arity = "1..*",
            description = "Job numbers, each for all claims of the job, or names of claims.")
    private List<String> names;

    @Option(
            names = "--on",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day of lodging; otherwise the day of the run.")
    private Optional<LocalDate> on = Optional.empty();

    @Mixin private LedgerOptions options;

    LodgedCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        ByHand.Order order = SaidByHand.order(options, world);
        LocalDate day = on.orElse(order.today());
        return SaidByHand.tell(world, ByHand.lodged(names, day, order), true);
    }
}
