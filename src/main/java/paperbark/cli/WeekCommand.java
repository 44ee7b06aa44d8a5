package paperbark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.office.Office;
import paperbark.office.OfficePapers;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code week}: what an office must not forget, made anew. */
@Command(
        name = "week",
        description = {
            "Makes the page of the week, its sheet and mail draft, and the office's calendar anew.",
            "watch does the same by itself on each new day and whenever the ledger changed."
        },
        footer = {"", "Example:", "  paperbark week office"},
        mixinStandardHelpOptions = true)
final class WeekCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "FOLDER", description = "The office folder, as setup makes it.")
    private Path folder;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            converter = ReadingOptions.DayConverter.class,
            description = "The day, e.g. 2026-11-23; otherwise today.")
    private Optional<LocalDate> asOf = Optional.empty();

    WeekCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        LocalDate today = asOf.orElseGet(() -> world.today(office.tables()));
        OfficePapers.makeAll(office, today, world.clock().instant(), Version.text())
                .forEach(file -> world.out().println("Result:       " + file));
        return Ending.DONE.exitCode();
    }
}
