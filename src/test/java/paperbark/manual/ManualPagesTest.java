package paperbark.manual;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The manual as a browser shows it. */
class ManualPagesTest {
    @TempDir private Path folder;

    @Test
    void aPageHasATitleTablesAndLinksToOtherPages() throws IOException {
        String page =
                Manual.page(
                        """
                        # Start & *stop*

                        See [the list](register.md#fields), [the law](https://example.com/a.md) and [below](#next-step).

                        | a | b |
                        |---|---|
                        | 1 | 2 |

                        ## Next step
                        """);

        assertThat(page)
                .contains("<title>Start &amp; stop - Paperbark</title>")
                .contains("<a href=\"register.html#fields\">")
                .contains("<a href=\"https://example.com/a.md\">")
                .contains("<a href=\"#next-step\">", "<h2 id=\"next-step\">")
                .contains("<div class=\"wide\" tabindex=\"0\"><table>", "<td>1</td>");
    }

    @Test
    void everyLinkAndPictureOfTheManualLeadsSomewhere() throws IOException {
        Manual.write(Path.of("src/site"), folder);
        try (Stream<Path> pages = Files.list(folder)) {
            for (Path page : pages.filter(p -> p.toString().endsWith(".html")).toList()) {
                String text = Files.readString(page);
                Matcher links = Pattern.compile("(?:href|src)=\"([^\"]+)\"").matcher(text);
                while (links.find()) {
                    leads(page, links.group(1));
                }
            }
        }
    }

    private void leads(Path page, String link) throws IOException {
        URI to = URI.create(link);
        if (to.getScheme() != null) {
            return;
        }
        Path target = to.getPath().isEmpty() ? page : page.resolveSibling(to.getPath());
        assertThat(target).as("link %s of %s", link, page.getFileName()).exists();
        assertThat(target.normalize()).startsWith(folder);
        if (to.getFragment() != null) {
            assertThat(Files.readString(target))
                    .as("link %s of %s", link, page.getFileName())
                    .contains("id=\"" + to.getFragment() + "\"");
        }
    }
}
