package paperbark.output.mail;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import paperbark.output.BrokenTemplate;
import paperbark.output.LetterView;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/**
 * The text of a letter by a template, the firm's or the shipped one.
 *
 * @param subject what the page's title says
 * @param html the page
 */
public record LetterText(String subject, String html) {
    private static final Pattern TITLE =
            Pattern.compile("<title[^>]*>(.*?)</title>", Pattern.DOTALL | Pattern.CASE_INSENSITIVE);
    private static final Pattern ENTITY = Pattern.compile("&(#[0-9]{1,6}|amp|lt|gt|quot|apos);");

    /**
     * Writes a letter.
     *
     * @param template name of the template below {@code mail/}, without ending
     * @throws BrokenTemplate when the template cannot be used, or its page has no title
     */
    public static LetterText of(TemplateEngine engine, String template, LetterView letter)
            throws BrokenTemplate {
        String name = "mail/" + template + ".ftlh";
        String html = engine.render(name, TemplateModel.of(letter));
        Matcher title = TITLE.matcher(html);
        Optional<String> subject =
                title.find()
                        ? Optional.of(plain(title.group(1)).replaceAll("\\s+", " ").strip())
                        : Optional.empty();
        return new LetterText(
                subject.filter(s -> !s.isEmpty())
                        .orElseThrow(
                                () ->
                                        new BrokenTemplate(
                                                name,
                                                0,
                                                0,
                                                "The page has no title, which is the subject.")),
                html);
    }

    private static String plain(String escaped) {
        return ENTITY.matcher(escaped)
                .replaceAll(m -> Matcher.quoteReplacement(letter(m.group(1))));
    }

    private static String letter(String entity) {
        return switch (entity) {
            case "amp" -> "&";
            case "lt" -> "<";
            case "gt" -> ">";
            case "quot" -> "\"";
            case "apos" -> "'";
            default -> {
                int code = Integer.parseInt(entity.substring(1));
                yield Character.isValidCodePoint(code) ? Character.toString(code) : "";
            }
        };
    }
}
