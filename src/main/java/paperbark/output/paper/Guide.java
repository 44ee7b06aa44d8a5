package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import paperbark.output.BatchInfo;
import paperbark.output.BrokenTemplate;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.TemplateEngine;
import paperbark.value.Days;

/** The page that hangs on the office wall: what goes into an office folder and what comes out. */
public final class Guide {
    private static final String TEMPLATE = "guide.ftlh";
    private static final String TITLE = "How this folder works";

    // It has no head and foot of its own, and must stay on one page.
    private static final String MARGINS =
            "\n@page { margin: 15mm 14mm 12mm 18mm; @top-left { content: none; }"
                    + " @bottom-left { content: none; } }";

    private Guide() {}

    /**
     * The guide as a PDF.
     *
     * @param folder the firm's templates, whose style it follows; a guide template there that is
     *     broken gives way to the shipped one
     * @param today the day printed on it
     * @param version of the program
     */
    public static byte[] of(Optional<Path> folder, LocalDate today, String version) {
        Map<String, Object> model = Map.of("today", Days.show(today), "program", version);
        TemplateEngine engine = new TemplateEngine(folder);
        TemplateEngine shipped = new TemplateEngine(Optional.empty());
        try {
            return drawn(markup(engine, model), engine, folder, imprint(today, version));
        } catch (BrokenTemplate | RuntimeException e) {
            try {
                return drawn(
                        markup(shipped, model), shipped, Optional.empty(), imprint(today, version));
            } catch (BrokenTemplate own) {
                throw new IllegalStateException("the shipped " + TEMPLATE + " is broken", own);
            }
        }
    }

    private static Document markup(TemplateEngine engine, Map<String, Object> model)
            throws BrokenTemplate {
        return Markup.parse(engine.render(TEMPLATE, model), TEMPLATE, engine);
    }

    private static Imprint imprint(LocalDate today, String version) {
        return new Imprint(
                TITLE, "Paperbark", new BatchInfo("guide", "", today, version), Conformance.BOTH);
    }

    private static byte[] drawn(
            Document content, TemplateEngine engine, Optional<Path> folder, Imprint imprint) {
        Document running = Markup.empty();
        running.appendChild(running.createElement("div"));
        PaperMarkup page =
                new PaperMarkup(
                        new Paper(PaperKind.COVER, "default", List.of()), running, content, false);
        String style = engine.source(Packs.STYLE).orElseThrow() + MARGINS;
        try (PDDocument document = new PDDocument()) {
            Layout.draw(
                    document,
                    PackDocument.of(List.of(page), TITLE, style),
                    1,
                    new ResourceGate(folder.map(Guide::real), Optional.empty()));
            imprint.stamp(document);
            document.getDocumentCatalog().setDocumentOutline(null);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path real(Path folder) {
        try {
            return folder.toRealPath();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
