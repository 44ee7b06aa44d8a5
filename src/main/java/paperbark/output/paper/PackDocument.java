package paperbark.output.paper;

import java.util.List;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/**
 * Puts the papers of a job into one XHTML document, with a bookmark for each paper. A paper begins
 * on the front of a sheet, or on the next page where the same people keep it with the one before.
 * One document a pack is laid out much faster than one a paper, and carries its fonts once.
 */
final class PackDocument {
    /** The id of the element around a paper, followed by its place in the pack from 0. */
    static final String LEAF = "paper-";

    /** The id of a paper's first element, followed by its anchor; the links of the cover use it. */
    private static final String MARK = "leaf-";

    private PackDocument() {}

    /**
     * The document of a pack.
     *
     * @param lean from which paper on nothing is laid out
     */
    static Document of(List<PaperMarkup> papers, String title, StyleSheet style, int lean) {
        Document document = Markup.empty();
        Element html = child(document, document, "html");
        html.setAttribute("lang", "en-AU");
        Element head = child(document, html, "head");
        child(document, head, "title").setTextContent(title);
        if (style.memory().isEmpty()) {
            style.putInto(document);
        }
        Element bookmarks = child(document, head, "bookmarks");
        Element body = child(document, html, "body");
        for (int i = 0; i < papers.size(); i++) {
            PaperMarkup paper = papers.get(i);
            Element bookmark = child(document, bookmarks, "bookmark");
            bookmark.setAttribute("name", paper.paper().title() + (paper.held() ? " (held)" : ""));
            bookmark.setAttribute("href", "#" + markOf(paper));
            Element leaf = child(document, body, "div");
            leaf.setAttribute("id", LEAF + i);
            leaf.setAttribute("class", "leaf");
            // Whatever the firm's style sheet says.
            leaf.setAttribute("style", i == 0 || i >= lean ? "" : begin(papers.get(i - 1), paper));
            if (i < lean) {
                append(paper.running(), leaf);
            }
            // A mark too low to lie on two pages, and not so low that an empty paper has no page.
            Element mark = child(document, leaf, "div");
            mark.setAttribute("id", markOf(paper));
            mark.setAttribute("style", i < lean ? "height: 0.1mm" : "height: 0");
            if (i < lean) {
                append(paper.content(), leaf);
            }
        }
        describe(document, "img", "Picture");
        describe(document, "object", "Page of the paper");
        return document;
    }

    /** The id of the paper's first element. */
    static String markOf(PaperMarkup paper) {
        return MARK + paper.paper().anchor();
    }

    private static String begin(PaperMarkup before, PaperMarkup paper) {
        return "page-break-before: " + (mayShareASheet(before, paper) ? "always" : "right");
    }

    /** Whether a paper may begin on the back of the one before. */
    static boolean mayShareASheet(PaperMarkup before, PaperMarkup paper) {
        return paper.paper().kind().mayShareASheetWith(before.paper().kind());
    }

    /** A picture or number of which its template says nothing is at least announced as one. */
    private static void describe(Document document, String tag, String words) {
        NodeList drawn = document.getElementsByTagName(tag);
        for (int i = 0; i < drawn.getLength(); i++) {
            Element element = (Element) drawn.item(i);
            if (element.getAttribute("alt").isBlank()) {
                element.setAttribute("alt", words);
            }
        }
    }

    private static Element child(Document document, Node parent, String name) {
        Element element = document.createElement(name);
        parent.appendChild(element);
        return element;
    }

    private static void append(Document from, Element to) {
        Node node = from.getDocumentElement().getFirstChild();
        for (; node != null; node = node.getNextSibling()) {
            to.appendChild(to.getOwnerDocument().importNode(node, true));
        }
    }
}
