package paperbark.output.index;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.outside.Browser;

/** The status page by WCAG 2.1, levels A and AA, as axe-core judges it. */
@Tag("outside")
class OfficePageForEveryoneTest {
    @TempDir private static Path folder;
    private static Browser browser;

    @BeforeAll
    static void open() throws IOException {
        OfficeView busy =
                new OfficeView(
                        "23 Nov 2026",
                        "test",
                        true,
                        new OfficeView.Beside(true, true, true, true, true),
                        List.of("The disk is full."),
                        List.of("A copy was not made."),
                        Optional.of("0123456789abcdef".repeat(4)),
                        Optional.of("week-47.xlsx"),
                        Optional.of("12 of 40 packs"),
                        List.of(new OfficeView.Waiting("week-48.xlsx", "it is open elsewhere")),
                        List.of("2026-11-22-week-46"),
                        List.of(
                                new OfficeView.Line(
                                        "2026-11-23-week-47",
                                        "index.html",
                                        "week-47.xlsx",
                                        "23 Nov 2026",
                                        40,
                                        13)),
                        Optional.of(
                                new OfficeView.Lodging(
                                        3,
                                        1,
                                        List.of(
                                                new OfficeView.Awaited(
                                                        "SB-1101",
                                                        "STC assignment",
                                                        "page 2 is missing",
                                                        "2026-11-23-week-47")),
                                        1,
                                        2)));
        OfficeView idle =
                new OfficeView(
                        "23 Nov 2026",
                        "test",
                        false,
                        new OfficeView.Beside(false, false, false, false, false),
                        List.of(),
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        List.of(),
                        List.of(),
                        Optional.empty());
        Files.writeString(folder.resolve("busy.html"), OfficePage.of(busy));
        Files.writeString(folder.resolve("idle.html"), OfficePage.of(idle));
        browser = new Browser(folder);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "busy, light, 1400",
        "busy, light, 320",
        "busy, dark, 1400",
        "busy, dark, 320",
        "idle, light, 1400",
        "idle, dark, 320"
    })
    void violatesNothing(String page, String colours, int width) {
        browser.sized(width, 900).in(colours).open(folder.resolve(page + ".html"));

        assertThat(browser.violations()).isEmpty();
        assertThat((Long) browser.ask("document.documentElement.scrollWidth"))
                .isLessThanOrEqualTo(width);
    }
}
