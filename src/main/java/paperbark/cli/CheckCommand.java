package paperbark.cli;

import java.util.concurrent.Callable;
import paperbark.batch.Batch;
import paperbark.batch.Outcome;
import paperbark.batch.Request;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code check}: the same reading and checking, and only the marked-up register comes out. */
@Command(
        name = "check",
        description =
                "Reads and checks a register, prints the findings and writes only the marked-up copy.",
        footer = {"", "Example:", "  paperbark check week-48.xlsx"},
        mixinStandardHelpOptions = true)
final class CheckCommand implements Callable<Integer> {
    private final Main.World world;

    @Mixin private RegisterOptions options;

    CheckCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Request request = options.request(world, "", Request.Extras.NONE);
        Outcome outcome =
                new Batch((what, done, of) -> {}, options.proof(world, request)).check(request);
        new Report(world.out(), options.json(), options.explain()).print(outcome);
        return outcome.ending().exitCode();
    }
}
