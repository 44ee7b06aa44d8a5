package paperbark.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.batch.Ending;
import paperbark.office.Office;
import paperbark.office.OfficeLock;
import paperbark.office.Scans;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code file-page}: a scanned page without a mark is placed by a person. */
@Command(
        name = "file-page",
        description = "Places a scanned page that lies in signed/to-place of the office folder.",
        footer = {"", "Example:", "  paperbark file-page 7 SB-1032 stc --page 2"},
        mixinStandardHelpOptions = true)
final class FilePageCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(index = "0", paramLabel = "N", description = "The page's number.")
    private int number;

    @Parameters(index = "1", paramLabel = "JOB", description = "The job number.")
    private String job;

    @Parameters(
            index = "2",
            paramLabel = "PAPER",
            description = "The paper, by the name of its template folder, such as stc or warranty.")
    private String paper;

    @Option(
            names = "--page",
            paramLabel = "PAGE",
            defaultValue = "1",
            description = "Which page of the paper it is; otherwise the first.")
    private int page;

    @Option(
            names = "--office",
            paramLabel = "FOLDER",
            description = "The office folder; otherwise the working directory.")
    private Path folder = Path.of("");

    FilePageCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        try (OfficeLock lock = OfficeLock.take(office, world.clock().instant())) {
            Scans scans = new Scans(lock, WatchCommand.world(world, office));
            Optional<String> refused = scans.place(number, job, paper, page);
            if (refused.isPresent()) {
                world.err().println(refused.get());
                return Ending.USAGE.exitCode();
            }
            scans.take().said().forEach(world.out()::println);
            return Ending.DONE.exitCode();
        } catch (OfficeLock.Busy busy) {
            world.err().println(Ending.BUSY.sentence());
            world.err().println(busy.getMessage());
            return Ending.BUSY.exitCode();
        }
    }
}
