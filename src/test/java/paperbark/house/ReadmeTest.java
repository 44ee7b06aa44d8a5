package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import paperbark.batch.Ending;

/** The README is short, and what it says is so. The rest is in the manual ({@link ManualTest}). */
class ReadmeTest {
    private static final Path README = Path.of("README.md");
    private static final int LONGEST = 160;

    @Test
    void itIsReadInAFewMinutes() throws IOException {
        assertThat(Files.readAllLines(README)).hasSizeLessThanOrEqualTo(LONGEST);
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
}
