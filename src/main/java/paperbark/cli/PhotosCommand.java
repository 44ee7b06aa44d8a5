package paperbark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.finding.Told;
import paperbark.office.Office;
import paperbark.office.Photos;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code photos}: which files lie there for a job, which are wanted, and what contradicts. */
@Command(
        name = "photos",
        description = {
            "Tells which photographs, certificates and receipts lie in \"photos\" of an",
            "office folder for its jobs, which are wanted, and which pictures contradict",
            "day and site."
        },
        footer = {"", "Example:", "  paperbark photos office --job SB-1032"},
        mixinStandardHelpOptions = true)
final class PhotosCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "FOLDER", description = "The office folder.")
    private Path folder;

    @Option(
            names = "--job",
            paramLabel = "JOB",
            description =
                    "Only this job; may be given several times. Otherwise those with a claim to be"
                            + " lodged, and those with files that were installed in the last 90 days.")
    private List<String> jobs = new ArrayList<>();

    @Option(names = "--explain", description = "Say why each finding matters.")
    private boolean explain;

    PhotosCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        Photos.Result result = Photos.look(office, jobs, world.today(office.tables()));
        FindingText text = new FindingText(world.out(), explain);
        Told.of(result.findings()).forEach(text::print);
        result.jobs().forEach(this::print);
        if (!result.unknown().isEmpty()) {
            world.err().println("Not in the ledger: " + String.join(", ", result.unknown()) + ".");
            return Ending.USAGE.exitCode();
        }
        if (result.jobs().isEmpty()) {
            world.out().println("No job waits for files, and none lie in photos/.");
        }
        return (result.findings().isEmpty() ? Ending.DONE : Ending.HELD).exitCode();
    }

    private void print(Photos.OfJob job) {
        world.out().println("Job " + job.job() + ": " + count(job.files().size()));
        job.files().forEach(file -> world.out().println("  " + file));
        job.wanted().forEach(line -> world.out().println("  Wanted: " + line));
        if (!job.compared().isEmpty()) {
            world.out().println("  " + job.compared());
        }
    }

    private static String count(int files) {
        return files == 0 ? "no file" : files == 1 ? "1 file" : files + " files";
    }
}
