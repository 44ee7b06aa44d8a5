package paperbark.cli;

import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** {@code completion}: lets a shell complete commands, options and names of findings. */
@Command(
        name = "completion",
        description = {
            "Prints what bash and zsh need to complete the words of the program's command line.",
            "Keep it in a file and have the shell read that file when it starts."
        },
        footer = {"", "Example:", "  paperbark completion > paperbark-completion.sh"},
        mixinStandardHelpOptions = true)
final class CompletionCommand implements Callable<Integer> {
    private final Main.World world;

    CompletionCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() {
        world.out().print(AutoComplete.bash("paperbark", Main.line(world)));
        return Ending.DONE.exitCode();
    }
}
