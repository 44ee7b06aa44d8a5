package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import paperbark.batch.Ending;
import paperbark.finding.Concern;
import paperbark.finding.FindingCode;
import paperbark.job.Field;

/**
 * What the README says is what the program does. {@code -Dreadme.renew} writes its two lists anew.
 */
class ReadmeTest {
    private static final Path README = Path.of("README.md");

    @Test
    void theListsOfFieldsAndFindingsAreThoseOfTheCode() throws IOException {
        String text = Files.readString(README);
        String renewed = between(between(text, "fields", fields()), "findings", findings());
        if (Boolean.getBoolean("readme.renew")) {
            Files.writeString(README, renewed);
        }
        assertThat(text).isEqualTo(renewed);
    }

    @ParameterizedTest
    @EnumSource(Ending.class)
    void everyExitCodeIsTold(Ending ending) throws IOException {
        assertThat(Files.readString(README)).contains("| " + ending.exitCode() + " | ");
    }

    @Test
    void everyFileThatTheReadmePointsToIsThere() throws IOException {
        var links = Pattern.compile("\\]\\(([^)#:]+)\\)").matcher(Files.readString(README));
        while (links.find()) {
            assertThat(Path.of(links.group(1))).exists();
        }
    }

    @Test
    void theTopLevelHoldsWhatWasAgreed() throws IOException {
        try (Stream<Path> all = Files.list(Path.of(""))) {
            assertThat(
                            all.map(Path::toString)
                                    .filter(n -> !n.startsWith(".") && !n.equals("target")))
                    .containsExactlyInAnyOrder(
                            "README.md",
                            "DEVELOPERS.md",
                            "LICENSE",
                            "pom.xml",
                            "src",
                            "templates",
                            "input-samples",
                            "output-samples");
        }
    }

    private static String between(String text, String mark, String list) {
        String begin = "<!-- " + mark + " -->\n";
        String end = "<!-- /" + mark + " -->";
        return text.substring(0, text.indexOf(begin) + begin.length())
                + list
                + text.substring(text.indexOf(end));
    }

    private static String fields() {
        return Field.values().stream()
                .map(
                        f ->
                                "| `"
                                        + f.key()
                                        + "` | "
                                        + f.label()
                                        + " | "
                                        + (f.isNeeded() ? "yes" : "")
                                        + " |\n")
                .collect(
                        Collectors.joining(
                                "",
                                "| field | understood without an alias | needed |\n|---|---|---|\n",
                                ""));
    }

    private static String findings() {
        return Arrays.stream(FindingCode.values())
                .map(
                        code ->
                                "| `"
                                        + code.code()
                                        + "` | "
                                        + code.severity().word()
                                        + " | "
                                        + holds(code)
                                        + " | "
                                        + code.why()
                                        + " |\n")
                .collect(
                        Collectors.joining(
                                "",
                                "| finding | usually | holds | why it matters |\n|---|---|---|---|\n",
                                ""));
    }

    private static String holds(FindingCode code) {
        return code.holds().stream()
                .sorted()
                .map(
                        c ->
                                Concern.CLAIMS.contains(c)
                                        ? c.toString()
                                        : c.toString().toLowerCase(Locale.ROOT).replace('_', ' '))
                .collect(Collectors.joining(", "));
    }
}
