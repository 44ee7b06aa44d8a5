package paperbark.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import picocli.CommandLine;

/** The whole program in this process, at a fixed moment, in a folder of the test's. */
public final class Program {
    private static final Instant NOON_OF_23_NOVEMBER = Instant.parse("2026-11-23T12:00:00Z");

    private Program() {}

    /** What a run said and how it ended. */
    public record Run(int exitCode, String out, String err) {}

    /** Runs the program with the given words. */
    public static Run run(Path directory, String... arguments) {
        return run(NOON_OF_23_NOVEMBER, directory, arguments);
    }

    /** Runs it at another moment. */
    public static Run run(Instant now, Path directory, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exitCode = Main.run(world(now, directory, out, err), arguments);
        return new Run(exitCode, out.toString(), err.toString());
    }

    /** The program's commands and options, with nothing run. */
    static CommandLine line(Path directory, String... words) {
        return Main.line(
                world(NOON_OF_23_NOVEMBER, directory, new StringWriter(), new StringWriter()),
                words);
    }

    private static Main.World world(
            Instant now, Path directory, StringWriter out, StringWriter err) {
        return new Main.World(
                new PrintWriter(out),
                new PrintWriter(err),
                Clock.fixed(now, ZoneOffset.UTC),
                directory,
                false,
                temporary -> {});
    }
}
