package paperbark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Consumer;
import paperbark.disk.TemporaryFolder;
import paperbark.office.OfficeDay;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The program {@code paperbark}. */
@Command(
        name = "paperbark",
        description =
                "Prepares the papers of a week of solar and heat-pump water heater installations.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        subcommandsRepeatable = false,
        synopsisSubcommandLabel = "COMMAND",
        footer = {
            "",
            "Exit codes: 0 all done; 10 published, some jobs held; 11 register refused; 12 already prepared; 13 must be kept;",
            "2 wrong usage; 20 another program is at work; 21 ledger unusable; 22 disk or permission; 23 tables, rules or templates unusable; 1 our own fault."
        })
public final class Main {
    private final World world;
    private Optional<Details> details = Optional.empty();

    /**
     * What the program sees of the world around it.
     *
     * @param temporary takes the folder that the process's temporary files are to lie in
     */
    record World(
            PrintWriter out,
            PrintWriter err,
            Clock clock,
            Path directory,
            boolean terminal,
            Consumer<Path> temporary) {

        /** The day where the firm is whose tables these are. */
        LocalDate today(Path tables) {
            return LocalDate.ofInstant(clock.instant(), OfficeDay.zone(tables, clock.getZone()));
        }
    }

    private Main(World world) {
        this.world = world;
    }

    /**
     * A program that writes to the given streams and takes today and relative paths from outside;
     * for tests.
     */
    static int run(World world, String... arguments) {
        boolean help = arguments.length == 0;
        CommandLine line = help ? line(world, "--help") : line(world, arguments);
        Main main = line.getCommand();
        try {
            return help ? usage(line) : line.execute(arguments);
        } finally {
            main.details.ifPresent(Details::close);
            world.out().flush();
            world.err().flush();
        }
    }

    @Option(
            names = "--debug",
            scope = CommandLine.ScopeType.INHERIT,
            description =
                    "Show what lies behind an error in the program's own terms, for whoever mends it.")
    private void debug(boolean wanted) {
        if (wanted && details.isEmpty()) {
            details = Optional.of(Details.shownOn(world.err()));
        }
    }

    /**
     * The commands and their options; where the first word names a command, that one alone, since
     * each costs time at the start.
     */
    static CommandLine line(World world, String... arguments) {
        CommandLine line = new CommandLine(new Main(world));
        if (Commands.areListed(arguments)) {
            Commands.listed(world).forEach(spec -> line.addSubcommand(spec.name(), spec));
        } else {
            Commands.asked(arguments).forEach(command -> line.addSubcommand(command.apply(world)));
        }
        line.registerConverter(Path.class, new PathConverter());
        line.setOut(world.out());
        line.setErr(world.err());
        line.setExecutionExceptionHandler(new Faults(world));
        line.setParameterExceptionHandler(new Misunderstood(world));
        line.setUsageHelpAutoWidth(false);
        return line;
    }

    private static int usage(CommandLine line) {
        line.usage(line.getErr());
        return CommandLine.ExitCode.USAGE;
    }

    /** Runs the program and ends the process with its exit code. */
    public static void main(String[] arguments) {
        ownTemporaryFolder();
        PrintWriter out = ConsoleText.to(System.out);
        PrintWriter err = ConsoleText.to(System.err);
        World world =
                new World(
                        out,
                        err,
                        Clock.systemDefaultZone(),
                        Path.of("").toAbsolutePath(),
                        System.console() != null,
                        Main::keepTemporaryFilesIn);
        System.exit(run(world, arguments));
    }

    /** Where it cannot be had, the system's has to do. */
    private static void ownTemporaryFolder() {
        try {
            TemporaryFolder.of(
                            Path.of(System.getProperty("java.io.tmpdir")),
                            System.getProperty("user.name"),
                            Instant.now())
                    .ifPresent(Main::keepTemporaryFilesIn);
        } catch (IOException | RuntimeException without) {
            // Nothing is lost but tidiness; a disk that is full is told of when it matters.
            return;
        }
    }

    /**
     * A process that is killed leaves its temporary files behind; here they are found and cleared.
     * The libraries ask for these properties each time or when the database is first used.
     */
    static void keepTemporaryFilesIn(Path folder) {
        System.setProperty("java.io.tmpdir", folder.toString());
        System.setProperty("org.sqlite.tmpdir", folder.toString());
    }
}
