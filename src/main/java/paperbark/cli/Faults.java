package paperbark.cli;

import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.util.Optional;
import paperbark.batch.Ending;
import paperbark.batch.Trouble;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** What went wrong outside the user's data, in a sentence and an exit code. */
final class Faults implements IExecutionExceptionHandler {
    private static final Logger LOG = System.getLogger("paperbark");

    private final Main.World world;

    Faults(Main.World world) {
        this.world = world;
    }

    @Override
    public int handleExecutionException(Exception fault, CommandLine line, ParseResult parsed) {
        Optional<Trouble> trouble = Trouble.of(fault);
        if (trouble.isPresent()) {
            LOG.log(Level.DEBUG, "what lies behind the next lines", fault);
            // What it is about comes first: the other sentence fits many causes.
            world.err().println(trouble.get().said());
            world.err().println(trouble.get().kind().ending().sentence());
            return trouble.get().kind().ending().exitCode();
        }
        return ours(fault);
    }

    /** Says what to do about a fault of our own. */
    int ours(Throwable fault) {
        world.err().println(Ending.FAULT.sentence());
        world.err()
                .println(
                        "Please report this with the lines below; they hold no customer's data but may name files.");
        fault.printStackTrace(world.err());
        return Ending.FAULT.exitCode();
    }
}
