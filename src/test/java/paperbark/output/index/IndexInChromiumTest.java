package paperbark.output.index;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import paperbark.output.BatchViews;
import paperbark.outside.Outside;

@Tag("outside")
class IndexInChromiumTest {
    @TempDir Path folder;

    @Test
    void showsEveryJobAndClosesEveryElement() throws Exception {
        Path page =
                Files.writeString(folder.resolve("index.html"), BatchViews.page(BatchViews.week()));
        Outside.Result result =
                Outside.run(
                        folder,
                        "chromium",
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--user-data-dir=" + folder.resolve("profile"),
                        "--dump-dom",
                        page.toUri().toString());
        assertThat(result.exitCode()).as(result.err()).isZero();
        assertThat(result.err()).doesNotContain("Content Security Policy", "Refused to");
        assertThat(result.out())
                .contains("SB-1041", "SB-1045", "Maree Sample", "Read the number off both tanks")
                .containsSubsequence("<main>", "id=\"job-1\"", "id=\"job-5\"", "</main>");
        // A browser moves what stands wrongly nested; nothing may have moved.
        assertThat(squeezed(result.out()))
                .contains(
                        squeezed(Files.readString(page))
                                .replaceFirst("(?s).*(<main>.*</main>).*", "$1"));
    }

    private static String squeezed(String html) {
        // The page's script shows the form that does nothing without it.
        return html.replaceAll("\\s+", "")
                .replace("autocomplete=\"off\"hidden", "autocomplete=\"off\"")
                .replace("open=\"\"", "open")
                .replace("&#39;", "'")
                .replace("&quot;", "\"")
                .replace("&gt;", ">");
    }
}
