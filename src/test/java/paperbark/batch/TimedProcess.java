package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What a whole process and those that it started took.
 *
 * @param wall seconds on the clock
 * @param processor seconds of all processors, in programs and system
 * @param megabytes the most memory that it had at one time
 */
record TimedProcess(double wall, double processor, double megabytes) {
    // The sample week has jobs that are held, which the exit code tells.
    private static final int STOPS_FOUND = 10;
    private static final Path TIME = Path.of("/usr/bin/time");

    /** Whether this computer has what measures. */
    static boolean isPossible() {
        return Files.isExecutable(TIME);
    }

    /**
     * Runs words of the shell.
     *
     * @param folder where a note of the measuring may lie
     * @return empty when the program failed
     */
    static Optional<TimedProcess> run(String words, Path folder)
            throws IOException, InterruptedException {
        Path measured = folder.resolve("measured");
        List<String> command =
                List.of(
                        TIME.toString(),
                        "-o",
                        measured.toString(),
                        "-f",
                        "%e %U %S %M",
                        "sh",
                        "-c",
                        words);
        int exitCode =
                new ProcessBuilder(command)
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start()
                        .waitFor();
        if (exitCode != 0 && exitCode != STOPS_FOUND) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(measured);
        // A line before it tells of an exit code.
        String[] numbers = lines.get(lines.size() - 1).split(" ");
        return Optional.of(
                new TimedProcess(
                        Double.parseDouble(numbers[0]),
                        Double.parseDouble(numbers[1]) + Double.parseDouble(numbers[2]),
                        Double.parseDouble(numbers[3]) / 1000));
    }

    /** The middle one of several rounds. */
    static double median(List<TimedProcess> rounds, Function<TimedProcess, Double> figure) {
        List<Double> sorted =
                rounds.stream().map(figure).sorted(Comparator.naturalOrder()).toList();
        return sorted.get(sorted.size() / 2);
    }

    /** The words of the shell that prepare a register as people do, by the packaged launcher. */
    static String prepare(String options, Path register, Path out) throws IOException {
        try (Stream<Path> packaged = Files.list(Path.of("target"))) {
            Path launcher =
                    packaged.map(folder -> folder.resolve("paperbark"))
                            .filter(file -> Files.isRegularFile(file) && Files.isExecutable(file))
                            .findFirst()
                            .orElseThrow();
            return "PAPERBARK_JAVA_OPTIONS='%s' %s prepare %s --as-of 2026-11-23 --tables %s --out %s"
                    .formatted(options, launcher, register, SampleWeek.TABLES, out);
        }
    }
}
