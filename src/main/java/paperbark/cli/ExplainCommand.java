package paperbark.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import paperbark.answer.Explained;
import paperbark.answer.Explainer;
import paperbark.answer.Explanation;
import paperbark.answer.Json;
import paperbark.batch.Ending;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code explain}: how the certificates of one job come about. */
@Command(
        name = "explain",
        description =
                "Prints the working of one job: what goes in, each step, the rules with their sources, the findings.",
        footer = {
            "",
            "Examples:",
            "  paperbark explain week-48.xlsx SB-1101",
            "  paperbark explain week-48.xlsx SB-1101 --what-if date=2027-01-04"
        },
        mixinStandardHelpOptions = true)
final class ExplainCommand implements Callable<Integer> {
    private final Main.World world;

    @Mixin private ReadingOptions options;

    @Parameters(index = "1", paramLabel = "JOB", description = "The job's number.")
    private String job;

    @Option(
            names = "--what-if",
            paramLabel = "NAME=VALUE[,...]",
            description =
                    "Show the working for other facts beside the real one: date, postcode, state, maker, model or old (the old heater).")
    private List<String> whatIf = new ArrayList<>();

    ExplainCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() {
        Explained answer = new Explainer(options.request(world)).explain(job, whatIf);
        if (answer instanceof Explained.Misunderstood wrong) {
            world.err().println(wrong.fact());
            world.err().println(wrong.remedy());
            return Ending.USAGE.exitCode();
        }
        if (answer instanceof Explained.Refused refused) {
            new Report(world.out(), options.json(), false).print(refused.outcome());
            return refused.outcome().ending().exitCode();
        }
        Explanation explanation = ((Explained.Working) answer).explanation();
        if (options.json()) {
            world.out().println(Json.of(explanation));
        } else {
            new WorkingText(world.out()).print(explanation);
        }
        return Ending.DONE.exitCode();
    }
}
