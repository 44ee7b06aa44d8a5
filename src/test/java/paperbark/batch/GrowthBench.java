package paperbark.batch;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.io.FileUtils;

/**
 * What longer registers cost: whole processes from the shell, with print run, tables and index, in
 * 512 MB of heap: all packs a second of processor, those beyond the register before, and the most
 * memory. The second figure tells how fast the program is once it is warm. Run by {@code mvn
 * -Pbench verify}; {@code -Dbench.jobs=10000} adds a register of that many.
 */
public final class GrowthBench {
    private static final int[] JOBS = {40, 240, 640};
    private static final int MORE = Integer.getInteger("bench.jobs", 0);
    private static final PrintStream OUT = System.out;

    private GrowthBench() {}

    /** Measures and prints. */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (!TimedProcess.isPossible()) {
            OUT.println("Growth: GNU time is missing, without which nothing is measured.");
            return;
        }
        List<Integer> sizes = new ArrayList<>();
        for (int jobs : JOBS) {
            sizes.add(jobs);
        }
        if (MORE > 0) {
            sizes.add(MORE);
        }
        Path folder = Files.createTempDirectory("growth");
        int jobsBefore = 0;
        double before = 0;
        for (int jobs : sizes) {
            Path register = SampleWeeks.write(folder.resolve("jobs-" + jobs + ".csv"), 0, jobs);
            Optional<TimedProcess> taken =
                    TimedProcess.run(TimedProcess.prepare("-Xmx512m", register, folder), folder);
            if (taken.isEmpty()) {
                OUT.printf("%,7d jobs failed%n", jobs);
                continue;
            }
            TimedProcess one = taken.get();
            OUT.printf(
                    Locale.ROOT,
                    "%,7d jobs: %6.1f s of wall, %6.1f s of processor, %5.1f packs a second of it, %5.1f beyond the first %d; %4.0f MB%n",
                    jobs,
                    one.wall(),
                    one.processor(),
                    jobs / one.processor(),
                    (jobs - jobsBefore) / (one.processor() - before),
                    jobsBefore,
                    one.megabytes());
            jobsBefore = jobs;
            before = one.processor();
        }
        FileUtils.deleteDirectory(folder.toFile());
    }
}
