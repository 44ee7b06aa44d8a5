package paperbark.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;

/** The program as a process of its own, at a fixed moment; for tests that kill it. */
public final class ProgramProcess {
    private ProgramProcess() {}

    /** Runs the program with the given words. */
    public static void main(String[] arguments) {
        Clock clock = Clock.fixed(Instant.parse("2026-11-23T12:00:00Z"), ZoneOffset.UTC);
        System.exit(
                Main.run(
                        new Main.World(
                                new PrintWriter(System.out, true, StandardCharsets.UTF_8),
                                new PrintWriter(System.err, true, StandardCharsets.UTF_8),
                                clock,
                                Path.of("").toAbsolutePath(),
                                false,
                                Main::keepTemporaryFilesIn),
                        arguments));
    }
}
