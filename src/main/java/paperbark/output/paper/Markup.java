package paperbark.output.paper;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import paperbark.output.BrokenTemplate;
import paperbark.output.TemplateEngine;

/** Reads the markup that a template gave, and finds the template's line when it is broken. */
final class Markup {
    private static final Builders BUILDERS = new Builders();

    // The shipped papers need a dozen.
    private static final int DEEPEST = 100;

    // The shipped papers have some hundred; each becomes at least one box in memory.
    private static final int MOST_ELEMENTS = 20_000;

    private static final List<String> SPANS = List.of("colspan", "rowspan", "span");
    private static final Pattern SPAN = Pattern.compile("[1-9][0-9]?");

    private Markup() {}

    /** An empty document. */
    static Document empty() {
        return BUILDERS.empty();
    }

    /**
     * The markup below an element named {@code div}.
     *
     * @param markup what the template gave
     * @param template the template's name
     * @param engine knows the template's own text
     * @throws BrokenTemplate when the markup is no well-formed XHTML
     */
    static Document parse(String markup, String template, TemplateEngine engine)
            throws BrokenTemplate {
        try {
            Document parsed = BUILDERS.parse("<div>" + markup + "</div>");
            refuseExcess(parsed, template);
            return parsed;
        } catch (SAXParseException e) {
            throw broken(e, markup, template, engine);
        } catch (SAXException | IOException e) {
            throw new BrokenTemplate(template, 0, 0, "The markup cannot be read.");
        }
    }

    /** Markup that differs in its words alone from some that was read before. */
    static Document parsed(TagsAndWords wording) {
        try {
            return BUILDERS.parse("<div>" + wording.markup() + "</div>");
        } catch (SAXException | IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /**
     * So many blank pages.
     *
     * @param id of an element on each of them, followed by the number of the page from 0
     */
    static Document blank(int pages, String id) {
        Document content = empty();
        Element all = content.createElement("div");
        content.appendChild(all);
        for (int i = 0; i < pages; i++) {
            Element page = content.createElement("div");
            page.setAttribute("id", id + i);
            page.setAttribute(
                    "style", i == 0 ? "height: 1mm" : "height: 1mm; page-break-before: always");
            all.appendChild(page);
        }
        return content;
    }

    /** Markup nested, or cells spanning, far beyond any page would exhaust the layout. */
    private static void refuseExcess(Document document, String template) throws BrokenTemplate {
        int depth = 0;
        int elements = 0;
        Node node = document.getDocumentElement();
        while (node != null) {
            if (depth > DEEPEST) {
                throw new BrokenTemplate(
                        template, 0, 0, "Elements are nested more than " + DEEPEST + " deep.");
            }
            elements += node instanceof Element ? 1 : 0;
            if (elements > MOST_ELEMENTS) {
                throw new BrokenTemplate(
                        template, 0, 0, "The markup has more than " + MOST_ELEMENTS + " elements.");
            }
            refuseSpans(node, template);
            if (node.getFirstChild() != null) {
                node = node.getFirstChild();
                depth++;
                continue;
            }
            while (node != null && node.getNextSibling() == null) {
                node = node.getParentNode();
                depth--;
            }
            node = node == null ? null : node.getNextSibling();
        }
    }

    private static void refuseSpans(Node node, String template) throws BrokenTemplate {
        if (!(node instanceof Element element)) {
            return;
        }
        if (!element.hasAttributes()) {
            return;
        }
        for (String name : SPANS) {
            String value = element.getAttribute(name);
            if (!isSpan(value)) {
                throw new BrokenTemplate(
                        template, 0, 0, name + "=\"" + value + "\" is no number from 1 to 99.");
            }
        }
    }

    /** Absent, or a number from 1 to 99; most elements have none, so no pattern is run on them. */
    private static boolean isSpan(String value) {
        return value.isEmpty() || SPAN.matcher(value).matches();
    }

    private static BrokenTemplate broken(
            SAXParseException e, String markup, String template, TemplateEngine engine) {
        List<String> lines = markup.lines().toList();
        int index = Math.max(0, Math.min(e.getLineNumber(), lines.size()) - 1);
        String line = lines.isEmpty() ? "" : lines.get(index);
        int found = engine.source(template).map(s -> lineLike(line, s)).orElse(0);
        int column = Math.max(1, e.getColumnNumber() - (index == 0 ? "<div>".length() : 0));
        int own =
                engine.source(template)
                        .filter(s -> found > 0)
                        .map(s -> s.lines().toList().get(found - 1))
                        .map(from -> TemplateColumn.of(from, line, column))
                        .orElse(0);
        String at = line.strip();
        String shown = at.length() > 60 ? at.substring(0, 60) + "..." : at;
        return new BrokenTemplate(
                template,
                found,
                own,
                "The markup is broken near \""
                        + shown
                        + "\": "
                        + Optional.ofNullable(e.getMessage()).orElse("no reason given").strip());
    }

    /**
     * The template's line from which a line of its result came: the one with the most words of its
     * own that all stand in it, in order; 0 where no line fits.
     */
    private static int lineLike(String result, String source) {
        List<String> lines = source.lines().toList();
        int best = 0;
        int most = 2;
        for (int i = 0; i < lines.size(); i++) {
            int own = wordsIn(lines.get(i), result);
            // Among equals the last: an element left open is noticed at the end.
            if (own >= most && own * 3 >= result.strip().length()) {
                best = i + 1;
                most = own;
            }
        }
        return best;
    }

    private static int wordsIn(String templateLine, String result) {
        int from = 0;
        int own = 0;
        for (String part : TemplateColumn.CODE.split(templateLine.strip(), -1)) {
            int at = result.indexOf(part, from);
            if (at < 0) {
                return 0;
            }
            from = at + part.length();
            own += part.strip().length();
        }
        return own;
    }
}
