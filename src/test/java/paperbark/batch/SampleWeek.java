package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;

/** Requests for the sample week, as of the day for which it was written. */
public final class SampleWeek {
    /** The register as a workbook. */
    public static final Path XLSX = Path.of("input-samples/week-47.xlsx");

    /** The same register as text. */
    public static final Path CSV = Path.of("input-samples/week-47.csv");

    /** The sample firm's tables. */
    public static final Path TABLES = Path.of("input-samples/tables");

    private static Path published;

    private SampleWeek() {}

    /**
     * The folder published for the workbook; made once for all tests that only read it.
     *
     * @throws IOException when it cannot be written
     */
    public static synchronized Path published() throws IOException {
        if (published == null) {
            Path out =
                    Files.createTempDirectory(Path.of("target").toAbsolutePath(), "sample-week-");
            published =
                    new Batch((what, done, of) -> {})
                            .prepare(request(XLSX, out))
                            .published()
                            .orElseThrow();
        }
        return published;
    }

    /** A request for a register with the sample firm's tables. */
    public static Request request(Path register, Path out) {
        return new Request(
                register,
                Optional.empty(),
                TABLES,
                Optional.empty(),
                Optional.of(TABLES.resolve("rules")),
                out,
                LocalDate.of(2026, 11, 23),
                false,
                "test");
    }
}
