package paperbark.output.index;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.outside.Browser;

/** The page of papers by WCAG 2.1, levels A and AA, as axe-core judges it. */
@Tag("outside")
class PapersPageForEveryoneTest {
    @TempDir private static Path folder;
    private static Browser browser;

    private static PapersView.Line line(String job, String file, String state, String claim) {
        return new PapersView.Line(
                job,
                "STC assignment",
                file,
                state,
                file.isEmpty() ? "" : "23 Nov 2026",
                claim,
                "2026-11-23-week-47",
                "packs/2026-11-23-week-47/index.html");
    }

    @BeforeAll
    static void open() throws IOException {
        PapersView used =
                new PapersView(
                        "23 Nov 2026",
                        "test",
                        true,
                        "papers.csv",
                        List.of("signed/2026-11-23-pile.html"),
                        List.of(
                                new PapersView.Part(
                                        "awaited",
                                        "Not back",
                                        "Papers that are to come back.",
                                        7,
                                        List.of(line("SB-1101", "", "not back yet", "none yet"))),
                                new PapersView.Part(
                                        "ready",
                                        "Claims ready to lodge",
                                        "Their assignment is back.",
                                        1,
                                        List.of(
                                                line(
                                                        "SB-1102",
                                                        "signed/a b.pdf",
                                                        "back",
                                                        "ready"))),
                                new PapersView.Part(
                                        "done", "Nothing to do", "Papers.", 0, List.of())));
        PapersView unused =
                new PapersView("23 Nov 2026", "test", false, "papers.csv", List.of(), List.of());
        Files.writeString(folder.resolve("used.html"), PapersPage.of(used));
        Files.writeString(folder.resolve("unused.html"), PapersPage.of(unused));
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
        "used, light, 1400",
        "used, light, 320",
        "used, dark, 1400",
        "used, dark, 320",
        "unused, light, 1400",
        "unused, dark, 320"
    })
    void violatesNothing(String page, String colours, int width) {
        browser.sized(width, 900).in(colours).open(folder.resolve(page + ".html"));

        assertThat(browser.violations()).isEmpty();
        assertThat((Long) browser.ask("document.documentElement.scrollWidth"))
                .isLessThanOrEqualTo(width);
    }
}
