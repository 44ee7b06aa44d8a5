package paperbark.cli;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.finding.Told;
import paperbark.office.Office;
import paperbark.office.OfficeLock;
import paperbark.office.Scans;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code scans}: signed papers that were scanned are sorted now. */
@Command(
        name = "scans",
        description = {
            "Sorts the scanned pages in \"scans\" of an office folder to jobs and papers, as watch does.",
            "What is missing, empty or of an older batch is told."
        },
        footer = {"", "Example:", "  paperbark scans office"},
        mixinStandardHelpOptions = true)
final class ScansCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(paramLabel = "FOLDER", description = "The office folder.")
    private Path folder;

    @Option(names = "--explain", description = "Say why each finding matters.")
    private boolean explain;

    ScansCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        try (OfficeLock lock = OfficeLock.take(office, world.clock().instant())) {
            return take(new Scans(lock, WatchCommand.world(world, office)));
        } catch (OfficeLock.Busy busy) {
            world.err().println(Ending.BUSY.sentence());
            world.err().println(busy.getMessage());
            return Ending.BUSY.exitCode();
        }
    }

    private int take(Scans scans) throws Exception {
        Scans.Result result = scans.take();
        FindingText text = new FindingText(world.out(), explain);
        Told.of(result.findings()).forEach(text::print);
        result.said().forEach(world.out()::println);
        return result.endings().stream()
                .filter(e -> e != Ending.ALREADY)
                .max(Comparator.comparing(Ending::exitCode))
                .orElse(result.endings().isEmpty() ? Ending.DONE : Ending.ALREADY)
                .exitCode();
    }
}
