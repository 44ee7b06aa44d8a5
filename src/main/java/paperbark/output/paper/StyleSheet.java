package paperbark.output.paper;

import java.util.LinkedHashMap;
import java.util.Map;
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

    // The firm's own and the shipped one, where an office folder is attended for weeks.
    private static final int MOST = 2;

    private static final Map<String, StyleSheet> SHARED =
            new LinkedHashMap<>(4, 0.75f, true) {
                private static final long serialVersionUID = 1L;

                @Override
                protected boolean removeEldestEntry(Map.Entry<String, StyleSheet> eldest) {
                    return size() > MOST;
                }
            };

    /**
     * A sheet with all that the process remembers of papers with the same text; safe, since what is
     * remembered goes by the templates' results and not by their names alone.
     */
    static StyleSheet shared(String text) {
        if (PaperMemory.drawsAll()) {
            return of(text);
        }
        synchronized (SHARED) {
            return SHARED.computeIfAbsent(text, StyleSheet::of);
        }
    }

    /** Lets go of all that the process remembers of papers, whatever it was made of. */
    static void forget() {
        synchronized (SHARED) {
            SHARED.clear();
        }
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
