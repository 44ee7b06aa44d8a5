package paperbark.manual;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import paperbark.outside.Browser;

/** Every page of the manual by WCAG 2.1, levels A and AA, as axe-core judges it. */
@Tag("outside")
class ManualForEveryoneTest {
    @TempDir private Path folder;

    @ParameterizedTest
    @CsvSource({"light, 1400", "light, 320", "dark, 1400", "dark, 320"})
    void violatesNothing(String colours, int width) throws IOException {
        Manual.write(Path.of("src/site"), folder.resolve("manual"));
        List<String> wrong = new ArrayList<>();
        List<Path> pages;
        try (Stream<Path> all = Files.list(folder.resolve("manual"))) {
            pages = all.filter(f -> f.toString().endsWith(".html")).sorted().toList();
        }
        try (Browser browser = new Browser(folder)) {
            browser.sized(width, 900).in(colours);
            for (Path page : pages) {
                browser.open(page);
                browser.violations().forEach(v -> wrong.add(page.getFileName() + " " + v));
                if ((Long) browser.ask("document.documentElement.scrollWidth") > width) {
                    wrong.add(page.getFileName() + " is wider than the window");
                }
            }
        }

        assertThat(pages).hasSizeGreaterThan(10);
        assertThat(wrong).isEmpty();
    }
}
