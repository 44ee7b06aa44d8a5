package paperbark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.batch.Reprint;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code print}: the packs of some jobs once more, as one file for the printer. */
@Command(
        name = "print",
        description =
                "Makes a print run of the jobs named out of a published batch, in the order named.",
        footer = {
            "",
            "Example:",
            "  paperbark print SB-1101 SB-1102 --batch packs/2026-11-23-week-47"
        },
        mixinStandardHelpOptions = true)
final class PrintCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(paramLabel = "JOB", arity = "1..*", description = "Job numbers.")
    private List<String> jobs;

    @Option(
            names = "--batch",
            paramLabel = "FOLDER",
            required = true,
            description = "The batch folder that holds their packs.")
    private Path batch;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Where the run goes; otherwise print-jobs.pdf here.")
    private Path out = Path.of("print-jobs.pdf");

    PrintCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Path folder = world.directory().resolve(batch).normalize();
        Optional<Reprint> published = Reprint.of(folder);
        if (published.isEmpty()) {
            return wrong(folder + " is no batch folder.", "Name one that holds a manifest.json.");
        }
        Reprint reprint = published.get();
        List<String> named = jobs.stream().distinct().toList();
        for (String job : named) {
            if (!reprint.has(job)) {
                return wrong(
                        "The batch has no pack of job \"" + job + "\".",
                        reprint.nearest(job)
                                .map(near -> "Did you mean " + near + "?")
                                .orElse("Take a job number from the batch's index page."));
            }
        }
        Path file = world.directory().resolve(out).normalize();
        if (file.startsWith(folder)) {
            return wrong(
                    file + " lies in the batch folder, which stays as it was published.",
                    "Choose another place with --out.");
        }
        reprint.write(named, file);
        world.out()
                .println(
                        named.size() == 1 ? "1 job -> " + file : named.size() + " jobs -> " + file);
        return Ending.DONE.exitCode();
    }

    private int wrong(String fact, String remedy) {
        world.err().println(fact);
        world.err().println(remedy);
        return Ending.USAGE.exitCode();
    }
}
