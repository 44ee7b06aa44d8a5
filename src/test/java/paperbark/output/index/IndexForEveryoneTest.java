package paperbark.output.index;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import paperbark.output.BatchViews;
import paperbark.outside.Browser;

/**
 * The index page for people who see little, use no mouse or have a small screen, by WCAG 2.1 levels
 * A and AA as axe-core judges it; and the choice among its jobs.
 */
@Tag("outside")
class IndexForEveryoneTest {
    private static final String ROWS = ".jobs tbody tr";

    @TempDir private static Path folder;
    private static Path page;
    private static Browser browser;

    @BeforeAll
    static void open() throws IOException {
        page = Files.writeString(folder.resolve("index.html"), BatchViews.page(BatchViews.week()));
        browser = new Browser(folder);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    /** A copy of the page on a desk's screen, in which nothing was ever chosen. */
    private static Browser opened() throws IOException {
        Path unknown = Files.createTempDirectory(folder, "opened").resolve("index.html");
        return browser.sized(1400, 900).in("light").open(Files.copy(page, unknown));
    }

    @ParameterizedTest
    @CsvSource({"light, 1400", "light, 320", "dark, 1400", "dark, 320"})
    void violatesNothing(String colours, int width) {
        browser.sized(width, 900).in(colours).open(page);
        browser.ask("document.querySelectorAll('details').forEach(d => d.open = true)");

        assertThat(browser.violations()).isEmpty();
        // WCAG 2.1, 1.4.10: at 320 CSS pixels nothing is read by scrolling in two directions.
        assertThat((Long) browser.ask("document.documentElement.scrollWidth"))
                .isLessThanOrEqualTo(width);
        assertThat(browser.ask("getComputedStyle(document.documentElement).backgroundColor"))
                .isEqualTo(colours.equals("light") ? "rgb(255, 255, 255)" : "rgb(20, 25, 26)");
    }

    @Test
    void theJudgeBites() throws IOException {
        Path bad =
                Files.writeString(
                        folder.resolve("bad.html"),
                        Files.readString(page)
                                .replace("lang=\"en-AU\"", "")
                                .replace("--quiet: #4a5659", "--quiet: #cccccc"));
        browser.sized(1400, 900).in("light").open(bad);

        assertThat(browser.violations())
                .anyMatch(v -> v.startsWith("html-has-lang"))
                .anyMatch(v -> v.startsWith("color-contrast"));
    }

    /** WCAG 2.1, 2.1.1, 2.1.2, 2.4.3 and 2.4.7: reached, left again, in order, and seen. */
    @Test
    void theKeyboardReachesEverythingInTheOrderOfThePage() throws IOException {
        opened();
        int stops = browser.all("a, summary, input, select, button").size();
        List<Object> way = new ArrayList<>();
        for (int i = 0; i < stops; i++) {
            browser.press(Keys.TAB);
            way.add(
                    browser.ask(
                            "Array.from(document.querySelectorAll("
                                    + "'a, summary, input, select, button'))"
                                    + ".indexOf(document.activeElement)"));
            assertThat(browser.ask("getComputedStyle(document.activeElement).outlineStyle"))
                    .as("" + browser.ask("document.activeElement.outerHTML"))
                    .isEqualTo("solid");
        }

        assertThat(stops).isGreaterThan(30);
        for (int i = 0; i < stops; i++) {
            assertThat(way.get(i)).isEqualTo((long) i);
        }
    }

    @Test
    void theFirstStopLeadsPastTheTop() throws IOException {
        opened().press(Keys.TAB).press(Keys.ENTER);

        assertThat(browser.ask("location.hash")).isEqualTo("#jobs");
    }

    @Test
    void aWordChoosesJobsEverywhereOnThePageAndOutlivesAReload() throws IOException {
        opened().reloadAfter(
                        () -> browser.tabTo("input").press("sb-1043"),
                        () ->
                                browser.ask("document.querySelector('input').value")
                                        .equals("sb-1043"));

        String told = "1 of 5 jobs shown; totals and dates are of all.";
        assertThat(browser.seen(".shown")).containsExactly(told);
        assertThat(browser.seen(ROWS)).singleElement().asString().contains("SB-1043");
        assertThat(browser.seen("[aria-labelledby=phones] li"))
                .singleElement()
                .asString()
                .contains("SB-1043");
        assertThat(browser.seen("details[data-job] summary")).allMatch(s -> s.contains("SB-1043"));
        assertThat(browser.seen("[aria-labelledby=crews] li"))
                .isNotEmpty()
                .allMatch(s -> s.contains("SB-1043"));

        browser.reloadAfter(
                () -> {
                    browser.tabTo("button").press(Keys.ENTER);
                    assertThat(browser.seen(ROWS, 5)).hasSize(5);
                    assertThat(browser.seen(".shown")).containsExactly("");
                },
                () -> browser.seen(ROWS).size() == 5);
    }

    @ParameterizedTest
    @CsvSource({"status, held", "crew, ", "day, "})
    void aListChoosesJobsByTheKeyboardAlone(String name, String first) throws IOException {
        opened().reloadAfter(
                        () -> {
                            browser.tabTo("select[name=" + name + "]").press(Keys.ARROW_DOWN);
                            assertThat(browser.seen(ROWS, fitting(name))).hasSize(fitting(name));
                        },
                        () -> browser.seen(ROWS).size() < 5);

        Object chosen = browser.ask("document.querySelector('[name=" + name + "]').value");
        assertThat(chosen).isNotEqualTo("");
        if (first != null) {
            assertThat(chosen).isEqualTo(first);
        }
        assertThat(browser.seen(ROWS)).hasSize(fitting(name)).isNotEmpty();
    }

    /** How many jobs are of what the list says. */
    private static int fitting(String name) {
        String list = "document.querySelector('[name=" + name + "]')";
        Object jobs =
                browser.ask(
                        ("Array.from(document.querySelectorAll('" + ROWS + "'))")
                                + (".filter(r => r.dataset." + name + " === " + list + ".value)")
                                + ".length");
        return ((Long) jobs).intValue();
    }

    @Test
    void aLinkToAJobThatWasNotChosenShowsAllAgain() throws IOException {
        opened().tabTo("input").press("no such job");
        assertThat(browser.seen(ROWS)).isEmpty();

        browser.all(".closing a").get(0).click();

        assertThat(browser.seen(ROWS)).hasSize(5);
    }

    @Test
    void withoutScriptEveryJobIsThereAndNothingThatDoesNotWork() throws IOException {
        try (Browser plain = new Browser(Files.createDirectory(folder.resolve("plain")))) {
            plain.withoutScript().open(page);

            assertThat(plain.seen(ROWS)).hasSize(5);
            assertThat(plain.seen("form.choose")).isEmpty();
        }
    }

    /** The page's own policy lets its one script run and no other. */
    @Test
    void noOtherScriptRuns() throws IOException {
        Path foreign =
                Files.writeString(
                        folder.resolve("foreign.html"),
                        Files.readString(page)
                                .replace(
                                        "</body>",
                                        "<script>document.title = \"foreign\"</script></body>"));

        assertThat(browser.open(foreign).ask("document.title")).isNotEqualTo("foreign");
        assertThat(browser.seen("form.choose")).hasSize(1);
    }
}
