package paperbark.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.apache.commons.csv.CSVFormat;

/**
 * A figure of speed that was measured and written down.
 *
 * @param figure its name
 * @param label what it is of in table and chart; empty keeps it out of both
 * @param value the figure; of those with a label documents a second of processor time
 * @param measuredOn the day of the measuring
 */
public record Recorded(String figure, String label, BigDecimal value, LocalDate measuredOn) {
    private static final Path FILE = Path.of("src/test/resources/speed/recorded.csv");

    /** All that is written down, in the order of the file. */
    public static List<Recorded> all() {
        CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
        try (var parser = format.parse(Files.newBufferedReader(FILE))) {
            return parser.stream()
                    .map(
                            row ->
                                    new Recorded(
                                            row.get("figure"),
                                            row.get("label"),
                                            new BigDecimal(row.get("value")),
                                            LocalDate.parse(row.get("measured on"))))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The figure of that name. */
    public static Recorded of(String figure) {
        return all().stream().filter(r -> r.figure().equals(figure)).findFirst().orElseThrow();
    }
}
