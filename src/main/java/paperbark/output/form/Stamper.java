package paperbark.output.form;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import paperbark.output.form.Mapping.Stamp;

/** Writes texts at places of upright pages. */
final class Stamper {
    static final float POINTS_PER_MM = 72f / 25.4f;

    private final PDDocument document;
    private final PDFont font;

    Stamper(PDDocument document, PDFont font) {
        this.document = document;
        this.font = font;
    }

    /**
     * Writes the lines of a text one below the other; false when one had to be cut.
     *
     * @param stamp on a page that the document has
     * @param value the text
     */
    boolean write(Stamp stamp, String value) throws IOException {
        PDPage page = document.getPage(stamp.page() - 1);
        float y = page.getMediaBox().getHeight() - stamp.y() * POINTS_PER_MM;
        boolean whole = true;
        try (PDPageContentStream out =
                new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
            for (String line : List.of(value.split("\\R"))) {
                TextFit fit = TextFit.line(font, line, stamp.size(), stamp.width() * POINTS_PER_MM);
                out.beginText();
                out.setFont(font, fit.size());
                out.newLineAtOffset(start(stamp, fit), y);
                out.showText(fit.lines().get(0));
                out.endText();
                y -= stamp.size() * TextFit.LEADING;
                whole &= fit.whole();
            }
        }
        return whole;
    }

    private float start(Stamp stamp, TextFit fit) {
        float room =
                stamp.width() * POINTS_PER_MM - TextFit.width(font, fit.lines().get(0), fit.size());
        float indent =
                switch (stamp.align()) {
                    case LEFT -> 0;
                    case CENTRE -> room / 2;
                    case RIGHT -> room;
                };
        return stamp.x() * POINTS_PER_MM + indent;
    }
}
