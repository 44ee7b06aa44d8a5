package paperbark.output.paper;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicBoolean;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.TemplateEngine;
import paperbark.output.pdf.PackWriter;

/**
 * What all packs of a process need and only the first would wait for: typeface, layout, writer.
 * Nothing of it is about a job, a firm or a template folder.
 */
public final class Readiness {
    private static final String WORDS = "Paper 1234567890";

    private static final AtomicBoolean BEGUN = new AtomicBoolean();

    private Readiness() {}

    /**
     * Begins to fetch it, once a process. What fails here fails again where it is needed, and is
     * told there.
     */
    public static void begin() {
        if (!BEGUN.getAndSet(true)) {
            Thread thread = new Thread(new FutureTask<>(Readiness::page), "readiness");
            // Whoever ends meanwhile does not wait for it.
            thread.setDaemon(true);
            thread.start();
        }
    }

    /** Draws a page for nobody. */
    private static byte[] page() throws IOException {
        Paper paper =
                new Paper(
                        PaperKind.COVER,
                        "default",
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty());
        PaperMarkup page = new PaperMarkup(paper, words(), words(), false);
        TemplateEngine shipped = new TemplateEngine(Optional.empty());
        StyleSheet style = StyleSheet.of(shipped.source(Packs.STYLE).orElseThrow());
        List<PaperMarkup> papers = List.of(page);
        Document markup = PackDocument.of(papers, WORDS, style);
        ResourceGate gate = new ResourceGate(Optional.empty(), Logo.NONE.png());
        try (PDDocument document = new PDDocument()) {
            LaidOut laidOut = Layout.draw(document, markup, style, papers, gate);
            new ScanMark(WORDS).draw(laidOut.pages(), document.getPage(0));
            laidOut.slim();
            return PackWriter.bytes(document);
        }
    }

    private static Document words() {
        Document page = Markup.empty();
        Element root = page.createElement("html");
        page.appendChild(root);
        Element last = root;
        for (String name : List.of("table", "tbody", "tr", "td", "p", "b")) {
            Element next = page.createElement(name);
            last.appendChild(next);
            last = next;
        }
        last.setTextContent(WORDS);
        return page;
    }
}
