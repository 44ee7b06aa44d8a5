package paperbark.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The pages of the manual in the order in which they are offered. */
final class Pages {
    static final Path FOLDER = Path.of("src/site/markdown");

    /** Of these, the ones that are there make the menu; a page that is in none is a mistake. */
    private static final Map<String, List<String>> CHAPTERS = chapters();

    private Pages() {}

    private static Map<String, List<String>> chapters() {
        Map<String, List<String>> all = new LinkedHashMap<>();
        all.put("Begin", List.of("starting", "making-it-yours"));
        all.put(
                "For each reader",
                List.of(
                        "admin",
                        "installer",
                        "signed-papers",
                        "accountant",
                        "going-out",
                        "templates",
                        "several-offices"));
        all.put(
                "To look up",
                List.of("register", "tables", "findings", "commands", "ledger", "limits"));
        all.put("Behind it", List.of("office-keeping", "speed", "decisions", "changes"));
        return all;
    }

    /** The chapters with their pages that are there. */
    static Map<String, List<String>> present() {
        Map<String, List<String>> present = new LinkedHashMap<>();
        CHAPTERS.forEach(
                (chapter, pages) -> {
                    List<String> there = pages.stream().filter(p -> Files.exists(file(p))).toList();
                    if (!there.isEmpty()) {
                        present.put(chapter, there);
                    }
                });
        return present;
    }

    /** All names of pages that are in the folder, the index left aside. */
    static List<String> inFolder() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(f -> f.getFileName().toString().replaceFirst("\\.md$", ""))
                    .filter(p -> !p.equals("index"))
                    .sorted()
                    .toList();
        }
    }

    static Path file(String page) {
        return FOLDER.resolve(page + ".md");
    }

    static String title(String page) {
        return text(page).lines().findFirst().orElseThrow().replaceFirst("^# ", "");
    }

    /** The first sentence below the title. */
    static String about(String page) {
        String paragraph =
                text(page)
                        .lines()
                        .skip(1)
                        .dropWhile(String::isBlank)
                        .takeWhile(line -> !line.isBlank())
                        .collect(Collectors.joining(" "));
        return paragraph.replaceFirst("(?<=[.:])\\s.*", "").replaceFirst(":$", ".");
    }

    static String text(String page) {
        try {
            return Files.readString(file(page));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
