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
            return tell(trouble.get().kind().ending(), trouble.get().said());
        }
        return ours(fault);
    }

    /** Says what to do about a fault of our own. */
    int ours(Throwable fault) {
        tell(
                Ending.FAULT,
                "Please report this with the lines below; they hold no customer's data but may name files.");
        fault.printStackTrace(world.err());
        return Ending.FAULT.exitCode();
    }

    private int tell(Ending ending, String detail) {
        world.err().println(ending.sentence());
        world.err().println(detail);
        return ending.exitCode();
    }
}
