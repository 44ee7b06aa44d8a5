package paperbark.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** {@code mvn test -Dtest=ChecksumsTest -Drules.renew} writes the list anew. */
class ChecksumsTest {
    private static final Path RULES = Path.of("src/main/resources/rules");
    private static final boolean RENEW = Boolean.getBoolean("rules.renew");

    @Test
    void theListHoldsTheChecksumOfEveryShippedTable() throws IOException {
        String list =
                "table,sha256\n"
                        + shippedTables().stream().map(this::line).collect(Collectors.joining());
        Path file = RULES.resolve(Checksums.NAME);
        if (RENEW && !"true".equals(System.getenv("CI"))) {
            Files.writeString(file, list);
        }
        assertThat(Files.readString(file))
                .as(
                        "a rule table was changed: compare the row with its source, note the change,"
                                + " then run mvn test -Dtest=ChecksumsTest -Drules.renew")
                .isEqualTo(list);
    }

    private static List<String> shippedTables() throws IOException {
        try (Stream<Path> files = Files.walk(RULES)) {
            return files.map(f -> RULES.relativize(f).toString().replace('\\', '/'))
                    .filter(name -> name.endsWith(".csv") && !name.equals(Checksums.NAME))
                    .sorted()
                    .toList();
        }
    }

    private String line(String table) {
        try {
            return table + "," + RuleFiles.sha256(Files.readAllBytes(RULES.resolve(table))) + "\n";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
