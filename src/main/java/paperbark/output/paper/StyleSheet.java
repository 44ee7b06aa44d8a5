package paperbark.output.paper;

import java.util.Optional;
import java.util.regex.Pattern;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * The style sheet of many documents.
 *
 * @param text as it stands in its file
 * @param memory what it made of the documents so far; empty where every document has to be matched
 * @param drawn the papers that were drawn with it; empty where every paper has to be drawn
 */
record StyleSheet(String text, Optional<StyleMemory> memory, Optional<PaperMemory> drawn) {
    // Pages that are not all alike, such as those on the left, make a paper another elsewhere.
    private static final Pattern UNLIKE_PAGES = Pattern.compile("@page[^{]*:");

    /** A sheet of which no document was made yet. */
    static StyleSheet of(String text) {
        if (!StyleMemory.fits(text)) {
            return new StyleSheet(text, Optional.empty(), Optional.empty());
        }
        return new StyleSheet(
                text,
                Optional.of(new StyleMemory()),
                UNLIKE_PAGES.matcher(text).find()
                        ? Optional.empty()
                        : Optional.of(new PaperMemory()));
    }

    /** The same, without what was drawn with it. */
    StyleSheet drawingAll() {
        return new StyleSheet(text, memory, Optional.empty());
    }

    /** Puts the sheet into a document. */
    void putInto(Document document) {
        Element style = document.createElement("style");
        style.setTextContent(text);
        document.getElementsByTagName("head").item(0).appendChild(style);
    }
}
