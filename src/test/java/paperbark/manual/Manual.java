package paperbark.manual;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * Makes the manual's pages for a browser from {@code src/site/markdown}; run by the build, so that
 * the program carries them. What lies in {@code src/site/resources} comes along as it is.
 */
public final class Manual {
    private static final String PAGE =
            """
            <!DOCTYPE html>
            <html lang="en-AU">
            <head>
            <meta charset="UTF-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src 'self' file: data:">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>%s - Paperbark</title>
            <style>
            %s</style>
            </head>
            <body>
            <header><nav aria-label="Manual"><a href="index.html">The manual</a></nav></header>
            <main>
            %s</main>
            </body>
            </html>
            """;

    private static final List<Extension> EXTENSIONS =
            List.of(TablesExtension.create(), HeadingAnchorExtension.create());

    private final Parser parser = Parser.builder().extensions(EXTENSIONS).build();
    private final HtmlRenderer renderer =
            HtmlRenderer.builder()
                    .extensions(EXTENSIONS)
                    .attributeProviderFactory(context -> Manual::leadToPages)
                    .build();

    private Manual() {}

    /** Writes the pages: the folder of the sources, then the folder of the pages. */
    public static void main(String[] arguments) throws IOException {
        write(Path.of(arguments[0]), Path.of(arguments[1]));
    }

    /**
     * Writes the pages.
     *
     * @param site folder with {@code markdown} and, perhaps, {@code resources}
     * @param pages folder of the pages, which is made
     */
    static void write(Path site, Path pages) throws IOException {
        Files.createDirectories(pages);
        try (Stream<Path> sources = Files.list(site.resolve("markdown"))) {
            for (Path source : sources.filter(s -> s.toString().endsWith(".md")).toList()) {
                String name = source.getFileName().toString().replaceFirst("md$", "html");
                Files.writeString(pages.resolve(name), page(Files.readString(source)));
            }
        }
        Path resources = site.resolve("resources");
        if (Files.isDirectory(resources)) {
            try (Stream<Path> files = Files.walk(resources)) {
                files.filter(Files::isRegularFile)
                        .forEach(file -> copy(file, pages.resolve(resources.relativize(file))));
            }
        }
    }

    private static void copy(Path file, Path to) {
        try {
            Files.createDirectories(to.getParent());
            Files.copy(file, to, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** One page, from its text in CommonMark with tables. */
    static String page(String source) throws IOException {
        Manual manual = new Manual();
        Node document = manual.parser.parse(source);
        String body =
                manual.renderer
                        .render(document)
                        .replace("<table>", "<div class=\"wide\" tabindex=\"0\"><table>")
                        .replace("</table>", "</table></div>");
        return PAGE.formatted(title(document), style(), body);
    }

    private static String title(Node document) {
        StringBuilder title = new StringBuilder();
        for (Node node = document.getFirstChild(); node != null; node = node.getNext()) {
            if (node instanceof Heading heading && title.isEmpty()) {
                heading.accept(
                        new AbstractVisitor() {
                            @Override
                            public void visit(Text text) {
                                title.append(text.getLiteral());
                            }

                            @Override
                            public void visit(Code code) {
                                title.append(code.getLiteral());
                            }
                        });
            }
        }
        return title.toString().replace("&", "&amp;").replace("<", "&lt;");
    }

    /** A link to another source leads to its page. */
    private static void leadToPages(Node node, String tag, Map<String, String> attributes) {
        if (node instanceof Link link && !link.getDestination().contains(":")) {
            attributes.put(
                    "href",
                    link.getDestination().replaceFirst("^([\\w-]+)\\.md(?=$|#)", "$1.html"));
        }
    }

    private static String style() throws IOException {
        try (var in = Manual.class.getResourceAsStream("/manual/manual.css")) {
            return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
    }
}
