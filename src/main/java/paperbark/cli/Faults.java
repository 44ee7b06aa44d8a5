package paperbark.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import paperbark.batch.Ending;
import paperbark.ledger.LedgerException;
import paperbark.rules.RulebookException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** What went wrong outside the user's data, in a sentence and an exit code. */
final class Faults implements IExecutionExceptionHandler {
    private final Main.World world;

    Faults(Main.World world) {
        this.world = world;
    }

    @Override
    public int handleExecutionException(Exception fault, CommandLine line, ParseResult parsed) {
        Throwable cause =
                fault instanceof UncheckedIOException unchecked ? unchecked.getCause() : fault;
        if (cause instanceof RulebookException) {
            return tell(Ending.SETUP, cause.getMessage());
        }
        if (cause instanceof LedgerException) {
            return tell(Ending.UNTRUSTED, cause.getMessage());
        }
        if (cause instanceof IOException) {
            return tell(Ending.DISK, inWords((IOException) cause));
        }
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

    private static String inWords(IOException fault) {
        if (fault instanceof NoSuchFileException missing) {
            return "Not found: " + missing.getFile();
        }
        if (fault instanceof AccessDeniedException denied) {
            return "No permission: " + denied.getFile();
        }
        if (fault instanceof FileSystemException file && file.getReason() != null) {
            return file.getReason() + ": " + file.getFile();
        }
        return String.valueOf(fault.getMessage());
    }
}
