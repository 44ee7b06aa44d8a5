package paperbark.output.paper;

import java.io.IOException;
import java.io.StringReader;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Builders of documents, lent to one thread at a time: making one costs more than reading a paper
 * with it. Reads no files and no document types.
 */
final class Builders {
    // As many as threads read papers at once.
    private static final int MOST = 16;

    // A builder remembers every name that it ever read.
    private static final int MOST_USES = 500;

    private final DocumentBuilderFactory factory = factory();
    private final BlockingQueue<Used> free = new ArrayBlockingQueue<>(MOST);

    /** A builder with the number of times that it was lent. */
    private record Used(DocumentBuilder builder, int times) {}

    /** An empty document. */
    Document empty() {
        Used lent = lend();
        Document made = lent.builder().newDocument();
        giveBack(lent);
        return made;
    }

    /**
     * The document of a text; a builder that failed is not lent again.
     *
     * @throws SAXException when the text is not well-formed
     */
    Document parse(String text) throws SAXException, IOException {
        Used lent = lend();
        Document made = lent.builder().parse(new InputSource(new StringReader(text)));
        giveBack(lent);
        return made;
    }

    private Used lend() {
        Used lent = free.poll();
        return lent == null ? new Used(fresh(), 0) : lent;
    }

    private void giveBack(Used lent) {
        if (lent.times() < MOST_USES) {
            // Dropped where there are enough.
            free.offer(new Used(lent.builder(), lent.times() + 1));
        }
    }

    private DocumentBuilder fresh() {
        // The factory makes no promise about threads.
        synchronized (factory) {
            try {
                DocumentBuilder builder = factory.newDocumentBuilder();
                builder.setErrorHandler(new DefaultHandler());
                return builder;
            } catch (ParserConfigurationException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private static DocumentBuilderFactory factory() {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            // Every node is looked at, so making them late only costs.
            factory.setAttribute("http://apache.org/xml/features/dom/defer-node-expansion", false);
            factory.setXIncludeAware(false);
            factory.setExpandEntityReferences(false);
            return factory;
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        }
    }
}
