package paperbark.answer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import paperbark.disk.Shipped;
import paperbark.output.PaperKind;

/** The papers that can be looked at, by the names that {@link Previewer#open} takes. */
public final class PreviewPapers {
    private static final String TEMPLATE = ".ftlh";

    private PreviewPapers() {}

    /**
     * A paper.
     *
     * @param name its folder, with a variant behind a slash where it is not the default
     * @param title what it is called on paper
     */
    public record Named(String name, String title) {}

    /** The names without variants. */
    public static List<String> names() {
        return PaperKind.values().stream().map(PaperKind::folder).distinct().toList();
    }

    /**
     * Every paper with its variants, the shipped ones and the firm's.
     *
     * @param templates the firm's own templates
     * @throws IOException when the program's own files or the firm's cannot be read
     */
    public static List<Named> all(Optional<Path> templates) throws IOException {
        Set<String> files = new TreeSet<>(Shipped.below(Shipped.TEMPLATES).keySet());
        if (templates.isPresent()) {
            files.addAll(below(templates.get()));
        }
        return names().stream()
                .flatMap(
                        name ->
                                Stream.concat(
                                                Stream.of(name),
                                                files.stream()
                                                        .filter(f -> isVariant(f, name))
                                                        .map(f -> f.replace(TEMPLATE, "")))
                                        .map(n -> new Named(n, title(name))))
                .toList();
    }

    private static boolean isVariant(String file, String paper) {
        return file.startsWith(paper + "/")
                && file.endsWith(TEMPLATE)
                && !file.equals(paper + "/default" + TEMPLATE);
    }

    private static String title(String folder) {
        return PaperKind.values().stream()
                .filter(k -> k.folder().equals(folder))
                .findFirst()
                .orElseThrow()
                .title();
    }

    private static List<String> below(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder, 2)) {
            return files.filter(Files::isRegularFile)
                    .map(f -> folder.relativize(f).toString().replace('\\', '/'))
                    .toList();
        }
    }
}
