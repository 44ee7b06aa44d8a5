package paperbark.output.paper;

import java.util.List;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.NodeList;

/** Finds the file that asks for an address: it is the one to be mended. */
final class TemplateFinder {
    private TemplateFinder() {}

    /** The template whose markup names the address; the style sheet where none does. */
    static String of(String uri, List<PaperMarkup> papers) {
        for (PaperMarkup paper : papers) {
            if (names(paper.content(), uri)) {
                return paper.template();
            }
            if (names(paper.running(), uri)) {
                return PaperWriter.RUNNING;
            }
        }
        return Packs.STYLE;
    }

    private static boolean names(Document markup, String uri) {
        NodeList all = markup.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            NamedNodeMap attributes = element.getAttributes();
            for (int a = 0; a < attributes.getLength(); a++) {
                if (means(attributes.item(a).getNodeValue(), uri)) {
                    return true;
                }
            }
            if (element.getTagName().equals("style") && asks(element.getTextContent(), uri)) {
                return true;
            }
        }
        return false;
    }

    /** The library has made the address whole, so what was written is the end of it. */
    private static boolean means(String written, String uri) {
        String bare = written.strip().replaceFirst("^(\\.\\.?/)+", "");
        return !bare.isEmpty() && uri.endsWith(bare) || asks(written, uri);
    }

    private static boolean asks(String style, String uri) {
        String name = uri.substring(uri.lastIndexOf('/') + 1);
        return !name.isEmpty() && style.contains("url(") && style.contains(name);
    }
}
