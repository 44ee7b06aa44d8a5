package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Requests for the sample week, as of the day for which it was written. */
public final class SampleWeek {
    /** The register as a workbook. */
    public static final Path XLSX = Path.of("input-samples/week-47.xlsx");

    /** The same register as text. */
    public static final Path CSV = Path.of("input-samples/week-47.csv");

    /** The sample firm's tables. */
    public static final Path TABLES = Path.of("input-samples/tables");

    private static Outcome outcome;

    private SampleWeek() {}

    /**
     * The folder published for the workbook; made once for all tests that only read it.
     *
     * @throws IOException when it cannot be written
     */
    public static Path published() throws IOException {
        return outcome().published().orElseThrow();
    }

    /** What came of preparing it. */
    static synchronized Outcome outcome() throws IOException {
        if (outcome == null) {
            Path target = Path.of("target").toAbsolutePath();
            Path out = Files.createTempDirectory(target, "sample-week-");
            outcome = new Batch((what, done, of) -> {}).prepare(request(XLSX, out));
        }
        return outcome;
    }

    /** The register as text with the rows of these jobs alone. */
    public static String only(String... jobs) throws IOException {
        List<String> lines = Files.readAllLines(CSV);
        return Stream.concat(
                        Stream.of(lines.get(0)),
                        Stream.of(jobs)
                                .map(
                                        job ->
                                                lines.stream()
                                                        .filter(l -> l.startsWith(job + ","))
                                                        .findFirst()
                                                        .orElseThrow()))
                .collect(Collectors.joining("\n", "", "\n"));
    }

    /** A request for a register with the sample firm's tables. */
    public static Request request(Path register, Path out) {
        return new Request(
                new Request.Register(register, Optional.empty()),
                new Request.FirmFiles(
                        TABLES, Optional.empty(), Optional.of(TABLES.resolve("rules"))),
                out,
                new Request.Run(LocalDate.of(2026, 11, 23), Instant.EPOCH, "test"),
                Request.Extras.NONE,
                Request.LedgerUse.NONE);
    }
}
