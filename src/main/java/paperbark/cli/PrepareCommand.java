package paperbark.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Batch;
import paperbark.batch.Outcome;
import paperbark.batch.Request;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code prepare}: one register in, every pack out. */
@Command(
        name = "prepare",
        description =
                "Reads a register and publishes one folder with all packs, the print run, the index page and the workbooks.",
        footer = {
            "",
            "Examples:",
            "  paperbark prepare week-48.xlsx",
            "  paperbark prepare week-48.xlsx --by-crew --out packs",
            "  paperbark prepare week-48.xlsx --fillable"
        },
        mixinStandardHelpOptions = true)
final class PrepareCommand implements Callable<Integer> {
    private final Main.World world;

    @Mixin private RegisterOptions options;

    @Option(names = "--site-sheets", description = "Give installed jobs a site sheet too.")
    private boolean siteSheets;

    @Option(
            names = "--csv",
            description = "Write the sheets of the summary workbook as CSV files too.")
    private boolean csv;

    @Option(
            names = "--by-crew",
            description =
                    "Write a print run for each crew and day too, with a run sheet in front, and one of the jobs that are held.")
    private boolean byCrew;

    @Option(
            names = "--fillable",
            description =
                    "Write the site sheet of each booked job with live fields too, to be filled in on a tablet.")
    private boolean fillable;

    @Option(
            names = "--threads",
            paramLabel = "COUNT",
            description =
                    "How many packs are made at a time; otherwise one for each processor, and one more where there are many.")
    private Optional<Integer> threads;

    @Spec private CommandSpec command;

    PrepareCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Request request =
                options.request(
                        world,
                        "packs",
                        new Request.Extras(siteSheets, csv, byCrew, fillable, false));
        ProgressLine progress = new ProgressLine(world);
        Outcome outcome =
                new Batch(progress, options.proof(world, request), threads()).prepare(request);
        progress.end();
        new Report(world.out(), options.json(), options.explain()).print(outcome);
        return outcome.ending().exitCode();
    }

    private Optional<Integer> threads() {
        if (threads.filter(wanted -> wanted < 1 || wanted > Batch.MOST_THREADS).isPresent()) {
            throw new ParameterException(
                    command.commandLine(),
                    "--threads "
                            + threads.get()
                            + " is no number from 1 to "
                            + Batch.MOST_THREADS
                            + ".");
        }
        return threads;
    }
}
