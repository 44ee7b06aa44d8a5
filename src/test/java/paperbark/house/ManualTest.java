package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the manual says is what the program does. {@code -Dreadme.renew} writes its generated parts
 * anew.
 */
class ManualTest {
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)]+)\\)");

    /**
     * A part of a page between two marks.
     *
     * @param made what should stand there
     */
    record Part(Path file, String mark, Supplier<String> made) {
        @Override
        public String toString() {
            return mark + " in " + file.getFileName();
        }
    }

    static Stream<Part> parts() {
        return Stream.of(
                new Part(Pages.file("register"), "fields", ManualParts::fields),
                new Part(Pages.file("tables"), "tables", ManualParts::tables),
                new Part(Pages.file("findings"), "findings", ManualParts::findings),
                new Part(Pages.file("commands"), "endings", ManualParts::endings),
                new Part(Pages.file("commands"), "commands", ManualParts::commands),
                new Part(Pages.file("index"), "pages", ManualParts::pages),
                new Part(Path.of("src/site/site.xml"), "menu", ManualParts::menu));
    }

    @ParameterizedTest
    @MethodSource("parts")
    void eachGeneratedPartIsWhatTheProgramSays(Part part) throws IOException {
        String text = Files.readString(part.file());
        String renewed = between(text, part.mark(), part.made().get());
        if (Boolean.getBoolean("readme.renew")) {
            Files.writeString(part.file(), renewed);
        }
        assertThat(text).isEqualTo(renewed);
    }

    private static String between(String text, String mark, String list) {
        String begin = "<!-- " + mark + " -->\n";
        String end = "<!-- /" + mark + " -->";
        String before = text.substring(0, text.indexOf(begin) + begin.length());
        String indent = text.substring(0, text.indexOf(end)).replaceFirst("(?s).*\n", "");
        return before + list + indent + text.substring(text.indexOf(end));
    }

    @Test
    void everyPageIsInTheMenu() throws IOException {
        List<String> offered = Pages.present().values().stream().flatMap(List::stream).toList();
        assertThat(offered).containsExactlyInAnyOrderElementsOf(Pages.inFolder());
    }

    @Test
    void everyPageHasATitleAndSaysWhatItIsAbout() throws IOException {
        for (String page : Pages.inFolder()) {
            assertThat(Pages.text(page)).as(page).startsWith("# ");
            assertThat(Pages.about(page)).as(page).endsWith(".");
        }
    }

    /** The pages travel alone, with the pictures beside them. */
    @Test
    void everyLinkLeadsToAPageOrAPictureOfTheManual() throws IOException {
        try (Stream<Path> pages = Files.list(Pages.FOLDER)) {
            for (Path page : pages.toList()) {
                var links = LINK.matcher(withoutCode(Files.readString(page)));
                while (links.find()) {
                    assertThat(target(links.group(1))).as("link of " + page).exists();
                }
            }
        }
    }

    private static Path target(String link) {
        return link.startsWith("images/")
                ? Path.of("src/site/resources").resolve(link)
                : Pages.FOLDER.resolve(link);
    }

    private static String withoutCode(String page) {
        return page.replaceAll("(?s)```.*?```", "").replaceAll("`[^`\n]*`", "");
    }
}
