package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The chart of speed is drawn from what was recorded, and the tables beside it say the same. {@code
 * mvn test -Dtest=SpeedChartTest -Dspeed.renew} draws it anew.
 */
class SpeedChartTest {
    private static final Path CHART = Path.of("src/site/resources/images/speed.svg");
    private static final int LABELS = 245;
    private static final int LONGEST = 340;
    private static final int ROW = 26;
    private static final int TITLE = 34;

    @BeforeAll
    static void draw() throws IOException {
        if (Boolean.getBoolean("speed.renew") && !"true".equals(System.getenv("CI"))) {
            Files.writeString(CHART, chart(shown()));
        }
    }

    @Test
    void theChartShowsWhatWasRecorded() throws IOException {
        assertThat(Files.readString(CHART)).isEqualTo(chart(shown()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"README.md", "src/site/markdown/speed.md"})
    void theTableSaysWhatWasRecorded(Path page) throws IOException {
        assertThat(Files.readAllLines(page))
                .containsSubsequence(
                        shown().stream()
                                .map(r -> "| %s | %s |".formatted(r.label(), r.value()))
                                .toList());
    }

    private static List<Recorded> shown() {
        return Recorded.all().stream().filter(r -> !r.label().isEmpty()).toList();
    }

    /** Full bars are ours, open ones those of others: they differ without colour too. */
    private static String chart(List<Recorded> bars) {
        BigDecimal most =
                bars.stream().map(Recorded::value).max(BigDecimal::compareTo).orElseThrow();
        int width = LABELS + LONGEST + 55;
        int height = TITLE + bars.size() * ROW + 8;
        StringBuilder svg = new StringBuilder();
        svg.append(
                """
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %1$d %2$d" width="%1$d" height="%2$d" font-family="sans-serif" font-size="13">
                <title>Documents a second of processor time</title>
                <rect width="%1$d" height="%2$d" fill="#fff"/>
                <text x="8" y="21" font-weight="bold">Documents a second of processor time (longer is faster)</text>
                """
                        .formatted(width, height));
        int y = TITLE;
        for (Recorded bar : bars) {
            int length =
                    bar.value()
                            .multiply(BigDecimal.valueOf(LONGEST))
                            .divide(most, 0, RoundingMode.HALF_UP)
                            .intValueExact();
            String fill = bar.figure().startsWith("paperbark") ? "#333" : "#fff";
            svg.append(
                    """
                    <text x="%d" y="%d" text-anchor="end">%s</text>
                    <rect x="%d" y="%d" width="%d" height="16" fill="%s" stroke="#333"/>
                    <text x="%d" y="%d">%s</text>
                    """
                            .formatted(
                                    LABELS - 8,
                                    y + 14,
                                    bar.label(),
                                    LABELS,
                                    y + 1,
                                    length,
                                    fill,
                                    LABELS + length + 6,
                                    y + 14,
                                    bar.value()));
            y += ROW;
        }
        return svg.append("</svg>\n").toString();
    }
}
