package paperbark.output;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The shared parts as the template files describe them: each with what it is and an example. */
final class MacroLibrary {
    private static final Pattern PART =
            Pattern.compile(
                    "(?:<#--(?<words>(?:(?!-->).)*?)\\s+Example: (?<example>(?:(?!-->).)*?)\\s*-->\\n)?<#(?<kind>macro|function) (?<name>\\w+)(?<parameters>(?:[^>\"]|\"[^\"]*\")*)>",
                    Pattern.DOTALL);

    private MacroLibrary() {}

    /**
     * One macro or function.
     *
     * @param parameters as written, with the values that stand in for those left out
     * @param words what it is; empty where nothing is said
     * @param example how it is used; empty where nothing is said
     */
    record Part(String kind, String name, String parameters, String words, String example) {}

    /** The files with shared parts, by the name under which papers import them. */
    static Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("p", "parts.ftlh");
        files.put("safety", "safety.ftlh");
        files.put("words", "stc-words.ftlh");
        files.put("acl", "acl-wording.ftlh");
        files.put("privacy", "privacy.ftlh");
        return files;
    }

    /** The parts of a file in its order. */
    static List<Part> parts(String file) {
        try {
            List<Part> parts = new ArrayList<>();
            Matcher part = PART.matcher(Files.readString(Path.of("templates", file)));
            while (part.find()) {
                parts.add(
                        new Part(
                                part.group("kind"),
                                part.group("name"),
                                part.group("parameters").strip(),
                                part.group("words") == null
                                        ? ""
                                        : part.group("words").replaceAll("\\s+", " ").strip(),
                                part.group("example") == null ? "" : part.group("example")));
            }
            return parts;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The whole library as a page. */
    static String markdown() {
        StringBuilder page = new StringBuilder();
        files().forEach(
                        (as, file) -> {
                            page.append("\n### ").append(file).append("\n\n");
                            page.append("`<#import \"/%s\" as %s>`\n".formatted(file, as));
                            parts(file).forEach(part -> append(as, part, page));
                        });
        return page.toString();
    }

    private static void append(String as, Part part, StringBuilder page) {
        page.append("\n**%s.%s**".formatted(as, part.name()));
        if (!part.parameters().isEmpty()) {
            page.append(" `%s`".formatted(part.parameters()));
        }
        page.append(part.kind().equals("function") ? " (function)" : "");
        page.append(": ").append(part.words()).append("\n\n```\n");
        page.append(part.example()).append("\n```\n");
    }
}
