package paperbark.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import paperbark.office.Check;
import paperbark.office.Doctor;
import paperbark.office.Office;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code doctor}: looks an office folder over. */
@Command(
        name = "doctor",
        description =
                "Looks an office folder over, prints a line for each thing and says what to do.",
        mixinStandardHelpOptions = true)
final class DoctorCommand implements Callable<Integer> {
    private final Main.World world;

    @Parameters(paramLabel = "FOLDER", description = "The office folder.")
    private Path folder;

    DoctorCommand(Main.World world) {
        this.world = world;
    }

    @Override
    public Integer call() throws Exception {
        Office office = new Office(world.directory().resolve(folder).toRealPath());
        List<Check> checks =
                Doctor.examine(office, world.clock().instant(), LocalDate.now(world.clock()));
        for (Check check : checks) {
            String mark = check.isWell() ? "well" : "MEND";
            world.out().printf("%s  %-12s %s%n", mark, check.what(), check.said());
        }
        return checks.stream().mapToInt(c -> c.ending().exitCode()).max().orElse(0);
    }
}
