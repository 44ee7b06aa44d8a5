package paperbark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import paperbark.office.LabelDesk;
import paperbark.office.Office;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code labels}: labels for the folders and tanks of jobs. */
@Command(
        name = "labels",
        description = {
            "Makes labels with job, site and mark, for folders or tanks, as a PDF:",
            "on sheets of 24, or one a page. Print it at its true size.",
            "Measures are millimetres, such as 70x37.5."
        },
        footer = {
            "",
            "Examples:",
            "  paperbark labels SB-1101 SB-1102 --office office",
            "  paperbark labels SB-1101 --tanks --single --office office"
        },
        mixinStandardHelpOptions = true)
final class LabelsCommand implements Callable<Integer> {
    private final Main.World world;

    @Spec private CommandSpec command;

    @Parameters(
            paramLabel = "JOB",
            arity = "1..*",
            description = "Job numbers, in the order of the labels.")
    private List<String> jobs;

    @Option(
            names = "--office",
            paramLabel = "FOLDER",
            description = "The office folder; otherwise the working directory.")
    private Path folder = Path.of("");

    @Option(names = "--tanks", description = "For tanks: without the owner's name.")
    private boolean tanks;

    @Option(
            names = "--single",
            description = "One label a page, of 100x50 unless --size says more.")
    private boolean single;

    @Option(
            names = "--start",
            paramLabel = "PLACE",
            defaultValue = "1",
            description = "The first free place of the first sheet, row by row; otherwise 1.")
    private int start;

    @Option(
            names = "--grid",
            paramLabel = "ACROSSxDOWN",
            description = "How many labels a sheet has; otherwise 3x8.")
    private Optional<String> grid = Optional.empty();

    @Option(names = "--size", paramLabel = "WxH", description = "A label; otherwise 70x37.")
    private Optional<String> size = Optional.empty();

    @Option(
            names = "--first",
            paramLabel = "XxY",
            description = "Left and upper edge of the first label; otherwise 0x0.5.")
    private Optional<String> first = Optional.empty();

    @Option(
            names = "--step",
            paramLabel = "WxH",
            description = "From one label to the next, gaps included; otherwise as --size.")
    private Optional<String> step = Optional.empty();

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Where they go; otherwise labels.pdf here.")
    private Path out = Path.of("labels.pdf");

    LabelsCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = OfficeArgument.of(world, folder, command);
        LabelDesk desk = new LabelDesk(office, world.today(office.tables()), Version.text());
        LabelDesk.Measures measures =
                new LabelDesk.Measures(single, grid, size, first, step, start);
        return MadePages.write(world, desk.labels(jobs, tanks, measures), out);
    }
}
