package paperbark.output.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import paperbark.output.BrokenTemplate;
import paperbark.output.Paper;
import paperbark.output.PaperKind;
import paperbark.output.TemplateEngine;
import paperbark.output.pdf.PackWriter;

/** A document that is no pack: one template in the style of the papers. */
final class OwnPage {
    private OwnPage() {}

    /**
     * The document.
     *
     * @param folder the firm's templates; one there that is broken gives way to the shipped one
     * @param margins what the style sheet of the papers, and that beside the template, lack for it
     */
    static byte[] of(
            Optional<Path> folder,
            String template,
            Map<String, Object> model,
            String margins,
            Imprint imprint) {
        try {
            return drawn(new TemplateEngine(folder), folder, template, model, margins, imprint);
        } catch (BrokenTemplate | RuntimeException e) {
            try {
                Optional<Path> none = Optional.empty();
                return drawn(new TemplateEngine(none), none, template, model, margins, imprint);
            } catch (BrokenTemplate own) {
                throw new IllegalStateException("the shipped " + template + " is broken", own);
            }
        }
    }

    private static byte[] drawn(
            TemplateEngine engine,
            Optional<Path> folder,
            String template,
            Map<String, Object> model,
            String margins,
            Imprint imprint)
            throws BrokenTemplate {
        Document content = Markup.parse(engine.render(template, model), template, engine);
        Document running = Markup.empty();
        running.appendChild(running.createElement("div"));
        PaperMarkup page =
                new PaperMarkup(
                        new Paper(PaperKind.COVER, "default", List.of()), running, content, false);
        String own = engine.source(template.replace(".ftlh", ".css")).orElse("");
        StyleSheet style =
                StyleSheet.of(engine.source(Packs.STYLE).orElseThrow() + "\n" + own + margins);
        try (PDDocument document = new PDDocument()) {
            LaidOut drawn =
                    Layout.draw(
                            document,
                            imprint.title(),
                            style,
                            List.of(page),
                            new ResourceGate(folder.map(OwnPage::real), Optional.empty()));
            drawn.slim();
            imprint.stamp(document);
            document.getDocumentCatalog().setDocumentOutline(null);
            return PackWriter.bytes(document);
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
