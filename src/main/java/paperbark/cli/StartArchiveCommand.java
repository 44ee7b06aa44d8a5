package paperbark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.disk.Shipped;
import paperbark.disk.StartArchive;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code start-archive}: makes the program start faster on this computer; {@code setup} does. */
@Command(
        name = "start-archive",
        description =
                "Makes the program start faster on this computer, with this Java; setup does it too.",
        footer = {"", "Example:", "  paperbark start-archive"},
        mixinStandardHelpOptions = true)
final class StartArchiveCommand implements Callable<Integer> {
    private static final String WALK = "--walk";

    // Each loads what others of its kind need too.
    private static final List<List<String>> COMMANDS =
            List.of(
                    List.of("--help"),
                    List.of("completion"),
                    List.of("rules"),
                    List.of("check", Shipped.REGISTER, "--as-of", "2026-11-23"),
                    List.of("ledger-new", "walk.db"),
                    List.of(
                            "prepare",
                            Shipped.REGISTER,
                            "--as-of",
                            "2026-11-23",
                            "--ledger",
                            "walk.db"),
                    List.of("owed", "--ledger", "walk.db"));

    private final Main.World world;

    @Option(names = WALK, hidden = true, description = "Walk through the program here.")
    private boolean walk;

    StartArchiveCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws IOException {
        if (walk) {
            COMMANDS.forEach(this::walk);
            return Ending.DONE.exitCode();
        }
        Optional<StartArchive> archive = archive();
        if (archive.isPresent() && archive.get().isPossible()) {
            make(archive.get());
            world.out().println("Made: " + archive.get().file());
        } else {
            world.out()
                    .println(
                            "Nothing to make: start it with the program's launcher, as somebody who may write beside it.");
        }
        return Ending.DONE.exitCode();
    }

    private void walk(List<String> words) {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        Main.run(
                new Main.World(
                        nowhere,
                        nowhere,
                        world.clock(),
                        world.directory(),
                        false,
                        world.temporary()),
                words.toArray(String[]::new));
    }

    /**
     * Makes it where it is missing or does not fit; without it all works, so that no failure
     * matters.
     *
     * @return whether it was made
     */
    static boolean complete() {
        try {
            Optional<StartArchive> archive = archive();
            if (archive.isEmpty() || !archive.get().isPossible() || archive.get().isFit()) {
                return false;
            }
            make(archive.get());
            return true;
        } catch (IOException | RuntimeException without) {
            return false;
        }
    }

    private static Optional<StartArchive> archive() {
        return Started.home()
                .map(home -> StartArchive.of(home, System.getProperty("java.class.path")));
    }

    private static void make(StartArchive archive) throws IOException {
        archive.make(Shipped.below(Shipped.SAMPLES), List.of("start-archive", WALK));
    }
}
