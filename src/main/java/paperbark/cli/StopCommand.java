package paperbark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.office.Office;
import paperbark.office.OfficeLock;
import paperbark.office.StopRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code stop}: ends the program that attends an office folder. */
@Command(
        name = "stop",
        description = {
            "Ends the program that attends an office folder, on this computer or another.",
            "A register that is being worked on is finished first."
        },
        footer = {"", "Example:", "  paperbark stop office"},
        mixinStandardHelpOptions = true)
final class StopCommand implements Callable<Integer> {
    private static final int LOOK_MILLISECONDS = 250;

    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "FOLDER", description = "The office folder.")
    private Path folder;

    @Option(
            names = "--wait",
            paramLabel = "SECONDS",
            defaultValue = "120",
            description = "How long to wait until it has ended; otherwise 120.")
    private int waitSeconds;

    StopCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        if (isFree(office)) {
            world.out().println("Nobody attends " + office.root() + ".");
            return Ending.DONE.exitCode();
        }
        StopRequest.make(office);
        for (long waited = 0; waited < waitSeconds * 1000L; waited += LOOK_MILLISECONDS) {
            Thread.sleep(LOOK_MILLISECONDS);
            if (isFree(office)) {
                world.out().println("Stopped. Registers wait in intake until it is started again.");
                return Ending.DONE.exitCode();
            }
        }
        world.out()
                .println("It is still at work on a register, and stops as soon as that is done.");
        return Ending.BUSY.exitCode();
    }

    /** Whoever has the lock attends the folder; a request to nobody must not stop the next one. */
    private boolean isFree(Office office) throws IOException {
        try {
            OfficeLock.take(office, world.clock().instant()).close();
            StopRequest.clear(office);
            return true;
        } catch (OfficeLock.Busy busy) {
            return false;
        }
    }
}
