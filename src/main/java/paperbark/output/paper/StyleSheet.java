package paperbark.output.paper;

import java.util.Optional;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * The style sheet of many documents.
 *
 * @param text as it stands in its file
 * @param memory what it made of the documents so far; empty where every document has to be matched
 */
record StyleSheet(String text, Optional<StyleMemory> memory) {
    /** A sheet of which no document was made yet. */
    static StyleSheet of(String text) {
        return new StyleSheet(
                text, StyleMemory.fits(text) ? Optional.of(new StyleMemory()) : Optional.empty());
    }

    /** Puts the sheet into a document. */
    void putInto(Document document) {
        Element style = document.createElement("style");
        style.setTextContent(text);
        document.getElementsByTagName("head").item(0).appendChild(style);
    }
}
