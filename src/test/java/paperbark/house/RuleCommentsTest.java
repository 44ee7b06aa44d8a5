package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.Test;

/**
 * The comment beside each branch of a rule: {@code // rule: <source id> <pinpoint>: <sentence>}, or
 * {@code // rule: common practice, no source: <sentence>}.
 */
class RuleCommentsTest {
    private static final Path MAIN = Path.of("src/main/java/paperbark");
    private static final Pattern RULE = Pattern.compile("// rule: (\\S+) ([^:]+): \\S.*");
    private static final String COMMON = "// rule: common practice, no source: ";

    private static Set<String> sources() throws IOException {
        try (CSVParser parser =
                CSVParser.parse(
                        Path.of("src/main/resources/rules/sources.csv"),
                        StandardCharsets.UTF_8,
                        CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get())) {
            return parser.stream().map(r -> r.get("id")).collect(Collectors.toSet());
        }
    }

    /** Every rule comment in one line, whatever number of lines it takes, with its file. */
    private static List<String> rules() throws IOException {
        List<String> rules = new ArrayList<>();
        try (Stream<Path> files = Files.walk(MAIN)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                List<String> lines = Files.readAllLines(file).stream().map(String::strip).toList();
                for (int i = 0; i < lines.size(); i++) {
                    if (lines.get(i).startsWith("// rule:")) {
                        StringBuilder rule = new StringBuilder(lines.get(i));
                        for (int j = i + 1;
                                lines.get(j).startsWith("// ")
                                        && !lines.get(j).startsWith("// rule:");
                                j++) {
                            rule.append(lines.get(j).substring(2));
                        }
                        rules.add(MAIN.relativize(file) + " " + rule);
                    }
                }
            }
        }
        return rules;
    }

    @Test
    void everyRuleNamesASourceOfTheTablesOrSaysThatItHasNone() throws IOException {
        Set<String> sources = sources();

        assertThat(rules())
                .hasSizeGreaterThan(30)
                .allSatisfy(
                        rule -> {
                            String comment = rule.substring(rule.indexOf("// rule:"));
                            Matcher named = RULE.matcher(comment);
                            assertThat(comment.startsWith(COMMON) || named.matches())
                                    .as("a source id, where in it, and a sentence")
                                    .isTrue();
                            if (!comment.startsWith(COMMON)) {
                                assertThat(sources).contains(named.group(1));
                            }
                        });
    }

    @Test
    void theRoomsOfRulesCiteThem() throws IOException {
        Set<String> files = new TreeSet<>();
        rules().forEach(rule -> files.add(rule.substring(0, rule.indexOf(' '))));

        assertThat(files)
                .contains(
                        "entitlement/StcFormula.java",
                        "entitlement/StcScheme.java",
                        "entitlement/VeecFormula.java",
                        "entitlement/VeecScheme.java",
                        "offer/FirmGst.java",
                        "offer/Gst.java",
                        "offer/OwnerGst.java",
                        "offer/QuoteSheet.java");
    }
}
