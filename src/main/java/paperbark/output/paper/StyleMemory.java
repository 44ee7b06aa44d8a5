package paperbark.output.paper;

import com.openhtmltopdf.css.newmatch.CascadedStyle;
import com.openhtmltopdf.css.newmatch.PageInfo;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.w3c.dom.Attr;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;

/**
 * The styles that a style sheet gave to elements, for all documents with that sheet: matching its
 * rules costs a sixth of a pack, and elements of the same name, class and attributes, below and
 * behind such elements, always come out alike. Safe for use by several threads.
 */
final class StyleMemory {
    // Selectors that look at more of a document than that, and rules that fetch.
    private static final Pattern FAR =
            Pattern.compile(
                    "[\\[~#@]|\\+[^,{}]*\\+|:(?!before|after|first-child|first-line|first-letter)");
    private static final Pattern PAGE_OR_BLOCK =
            Pattern.compile("@page[^{]*\\{(?:[^{}]*\\{[^{}]*\\})*[^{}]*\\}|\\{[^{}]*\\}");
    private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/", Pattern.DOTALL);

    // The shipped papers make some thousand.
    private static final int MOST = 20_000;

    // What may differ from job to job without a rule looking at it.
    private static final java.util.Set<String> UNSEEN =
            java.util.Set.of("id", "href", "alt", "name", "datetime", "title");

    private final Map<Likeness, Integer> kinds = new ConcurrentHashMap<>();
    private final AtomicInteger last = new AtomicInteger();
    private final Map<Integer, CascadedStyle> styles = new ConcurrentHashMap<>();
    private final Map<Part, Optional<CascadedStyle>> parts = new ConcurrentHashMap<>();
    private final Map<String, PageInfo> pages = new ConcurrentHashMap<>();

    /** What the rules can see of an element. */
    private record Likeness(int parent, String self, String before) {}

    /** Something that the sheet makes of an element, such as what stands before it. */
    private record Part(int kind, String name) {}

    /** Whether what a style sheet says of an element follows from what is remembered of it. */
    static boolean fits(String sheet) {
        String rules = COMMENT.matcher(sheet).replaceAll("");
        String selectors = PAGE_OR_BLOCK.matcher(rules).replaceAll("{}");
        return !FAR.matcher(selectors).find();
    }

    /** A number for all elements that are alike; 0 where there are too many kinds. */
    int kindOf(int parent, Element element) {
        Likeness likeness = new Likeness(parent, said(element), said(before(element)));
        Integer known = kinds.get(likeness);
        if (known != null) {
            return known;
        }
        return kinds.size() > MOST
                ? 0
                : kinds.computeIfAbsent(likeness, l -> last.incrementAndGet());
    }

    private static Element before(Element element) {
        Node node = element.getPreviousSibling();
        while (node != null && !(node instanceof Element)) {
            node = node.getPreviousSibling();
        }
        return (Element) node;
    }

    private static String said(Element element) {
        if (element == null) {
            return "";
        }
        NamedNodeMap attributes = element.getAttributes();
        StringBuilder said = new StringBuilder(element.getNodeName());
        for (int i = 0; i < attributes.getLength(); i++) {
            Attr attribute = (Attr) attributes.item(i);
            said.append('\0').append(attribute.getName());
            if (!UNSEEN.contains(attribute.getName())) {
                said.append('=').append(attribute.getValue());
            }
        }
        return said.toString();
    }

    CascadedStyle style(int kind, Supplier<CascadedStyle> matched) {
        return kind == 0 ? matched.get() : styles.computeIfAbsent(kind, k -> matched.get());
    }

    /** The style of a part of an element, or null when the sheet makes no such part. */
    CascadedStyle part(int kind, String name, Supplier<CascadedStyle> matched) {
        return kind == 0
                ? matched.get()
                : parts.computeIfAbsent(
                                new Part(kind, name), p -> Optional.ofNullable(matched.get()))
                        .orElse(null);
    }

    PageInfo page(String name, String kind, Supplier<PageInfo> matched) {
        return pages.computeIfAbsent(name + "\0" + kind, k -> matched.get());
    }
}
