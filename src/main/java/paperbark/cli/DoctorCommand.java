package paperbark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.concurrent.Callable;
import paperbark.answer.Previewer;
import paperbark.batch.Ending;
import paperbark.batch.Request;
import paperbark.office.CheckResult;
import paperbark.office.Doctor;
import paperbark.office.Equipment;
import paperbark.office.Office;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code doctor}: looks an office folder over. */
@Command(
        name = "doctor",
        description =
                "Looks an office folder over, prints a line for each thing and says what to do.",
        footer = {"", "Example:", "  paperbark doctor office"},
        mixinStandardHelpOptions = true)
final class DoctorCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(paramLabel = "FOLDER", description = "The office folder.")
    private Path folder;

    @Option(
            names = "--clock-right",
            description =
                    "The clock is right and a batch of a day to come was made while it was wrong; asked once a batch.")
    private boolean clockRight;

    DoctorCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = new Office(world.directory().resolve(folder).toRealPath());
        List<CheckResult> checks =
                new ArrayList<>(
                        Doctor.examine(
                                office,
                                world.clock().instant(),
                                world.today(office.tables()),
                                clockRight));
        boolean readable =
                checks.stream()
                        .filter(c -> c.what().equals("templates"))
                        .allMatch(CheckResult::isWell);
        if (readable && Equipment.hasOwnPapers(office.templates())) {
            checks.addAll(papers(office));
        }
        for (CheckResult check : checks) {
            String mark = check.isWell() ? "well" : "MEND";
            world.out().printf("%s  %-12s %s%n", mark, check.what(), check.said());
        }
        return checks.stream().mapToInt(c -> c.ending().exitCode()).max().orElse(0);
    }

    /** Fills every template and form once, since many mistakes show only then. */
    private List<CheckResult> papers(Office office) throws IOException {
        SortedSet<String> papers = Equipment.papers(office.templates(), office.tables());
        Request request =
                new Request(
                        new Request.Register(office.root(), Optional.empty()),
                        new Request.FirmFiles(office.tables(), office.templates(), office.rules()),
                        office.root(),
                        new Request.Run(
                                Previewer.SAMPLE_DAY, world.clock().instant(), Version.text()),
                        Request.Extras.NONE,
                        Request.LedgerUse.NONE);
        List<CheckResult> wrong =
                Previewer.tryAll(request, papers).stream()
                        .map(f -> f.where() + ": " + f.fact() + " " + f.remedy())
                        .map(said -> new CheckResult("papers", Ending.SETUP, said))
                        .toList();
        return wrong.isEmpty()
                ? List.of(
                        new CheckResult(
                                "papers",
                                Ending.DONE,
                                papers.size() + " were filled with a job of the sample week"))
                : wrong;
    }
}
