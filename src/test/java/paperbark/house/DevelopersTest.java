package paperbark.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What is told to developers names only what is there. */
class DevelopersTest {
    private static final Path DEVELOPERS = Path.of("DEVELOPERS.md");

    /** A class by its name, with or without a member. */
    private static final Pattern CLASS = Pattern.compile("`([A-Z][a-z]\\w*)(?:\\.[a-z]\\w*)?`");

    private static final Pattern SINCE = Pattern.compile("\\*\\d{4}-\\d{2}[,.]");

    @Test
    void everyClassNamedIsOneOfOurs() throws IOException {
        Set<String> named = new TreeSet<>();
        for (Path page : List.of(DEVELOPERS, Pages.file("decisions"))) {
            var names = CLASS.matcher(Files.readString(page));
            while (names.find()) {
                named.add(names.group(1));
            }
        }
        assertThat(named).hasSizeGreaterThan(100).isSubsetOf(classes());
    }

    @Test
    void everyDecisionHasItsDay() {
        List<String> decisions =
                Stream.of(Pages.text("decisions").split("\n(?=- |## )"))
                        .filter(part -> part.startsWith("- "))
                        .toList();
        assertThat(decisions).hasSizeGreaterThan(60);
        assertThat(decisions).allSatisfy(d -> assertThat(d).containsPattern(SINCE));
    }

    @Test
    void decisionsAreSortedByRoom() {
        assertThat(Pages.text("decisions").lines().filter(line -> line.startsWith("## `")))
                .allSatisfy(
                        heading ->
                                assertThat(Path.of("src/main/java/paperbark", room(heading)))
                                        .isDirectory());
    }

    private static String room(String heading) {
        return heading.replaceFirst("## `(\\w+)`.*", "$1");
    }

    private static Set<String> classes() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src"))) {
            return files.map(f -> f.getFileName().toString())
                    .filter(f -> f.endsWith(".java"))
                    .map(f -> f.replaceFirst("\\.java$", ""))
                    .collect(Collectors.toSet());
        }
    }
}
