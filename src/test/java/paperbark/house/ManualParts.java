package paperbark.house;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import paperbark.batch.Ending;
import paperbark.cli.Usages;
import paperbark.finding.Concern;
import paperbark.finding.FindingCode;
import paperbark.firm.TableShapes;
import paperbark.job.Field;

/** The parts of the manual that are made from the program. */
final class ManualParts {
    private static final Path SAMPLE_TABLES = Path.of("input-samples/tables");

    private ManualParts() {}

    static String fields() {
        return rows(
                List.of("field", "understood without an alias", "needed"),
                Field.values().stream(),
                f -> List.of("`" + f.key() + "`", f.label(), f.isNeeded() ? "yes" : ""));
    }

    static String findings() {
        return rows(
                List.of("finding", "usually", "holds", "why it matters"),
                Arrays.stream(FindingCode.values()),
                c -> List.of("`" + c.code() + "`", c.severity().word(), holds(c), c.why()));
    }

    private static String holds(FindingCode code) {
        return code.holds().stream().sorted().map(Concern::words).collect(Collectors.joining(", "));
    }

    static String endings() {
        return rows(
                List.of("exit code", "meaning"),
                Arrays.stream(Ending.values()),
                e -> List.of(Integer.toString(e.exitCode()), e.sentence()));
    }

    static String commands() {
        return Usages.all().entrySet().stream()
                .map(c -> "### " + c.getKey() + "\n\n```\n" + c.getValue().strip() + "\n```\n")
                .collect(Collectors.joining("\n"));
    }

    static String tables() {
        return TableShapes.all().stream().map(ManualParts::table).collect(Collectors.joining("\n"));
    }

    private static String table(TableShapes.Shape shape) {
        List<CSVRecord> sample = sample(shape.table());
        String heading = "### " + shape.table() + "\n\n";
        if (shape.table().equals("firm")) {
            return heading
                    + "A row a fact: columns `fact` and `value`.\n\n"
                    + rows(
                            List.of("fact", "example"),
                            TableShapes.factsOfTheFirm().stream(),
                            fact -> List.of("`" + fact + "`", value(sample, fact)));
        }
        return heading
                + rows(
                        List.of("column", "needed", "example"),
                        shape.columns().stream(),
                        c ->
                                List.of(
                                        "`" + c.name() + "`",
                                        c.isNeeded() ? "yes" : "",
                                        first(sample, c.name())));
    }

    private static String value(List<CSVRecord> sample, String fact) {
        return sample.stream()
                .filter(row -> row.get("fact").equals(fact))
                .map(row -> row.get("value"))
                .findFirst()
                .orElse("");
    }

    private static String first(List<CSVRecord> sample, String column) {
        return sample.stream()
                .flatMap(row -> Optional.ofNullable(row.toMap().get(column)).stream())
                .filter(value -> !value.isBlank())
                .findFirst()
                .orElse("");
    }

    private static List<CSVRecord> sample(String table) {
        CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().get();
        Path file = SAMPLE_TABLES.resolve(table + ".csv");
        try (CSVParser parser =
                CSVParser.parse(
                        Files.readString(file, StandardCharsets.UTF_8).replace("\uFEFF", ""),
                        format)) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new IllegalStateException("the sample firm has no table " + table, e);
        }
    }

    static String pages() {
        return chapters("## %s\n\n", "- [%2$s](%1$s.md): %3$s\n").replaceFirst("\n$", "");
    }

    static String menu() {
        return Pages.present().entrySet().stream()
                .map(c -> "    <menu name=\"" + c.getKey() + "\">\n" + items(c) + "    </menu>\n")
                .collect(Collectors.joining());
    }

    private static String items(Map.Entry<String, List<String>> chapter) {
        return chapter.getValue().stream()
                .map(
                        p ->
                                "      <item name=\"%s\" href=\"%s.html\"/>\n"
                                        .formatted(Pages.title(p), p))
                .collect(Collectors.joining());
    }

    private static String chapters(String heading, String line) {
        return Pages.present().entrySet().stream()
                .map(
                        c ->
                                heading.formatted(c.getKey())
                                        + c.getValue().stream()
                                                .map(
                                                        p ->
                                                                line.formatted(
                                                                        p,
                                                                        Pages.title(p),
                                                                        Pages.about(p)))
                                                .collect(Collectors.joining())
                                        + "\n")
                .collect(Collectors.joining());
    }

    private static <T> String rows(
            List<String> heads, Stream<T> things, Function<T, List<String>> cells) {
        return row(heads)
                + "|---".repeat(heads.size())
                + "|\n"
                + things.map(cells).map(ManualParts::row).collect(Collectors.joining());
    }

    private static String row(List<String> cells) {
        return cells.stream()
                .map(c -> c.replace("|", "\\|"))
                .collect(Collectors.joining(" | ", "| ", " |\n"));
    }
}
