package paperbark.output.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import paperbark.output.Typeface;

/**
 * Shows in a printed stack where a job begins: a black bar at the right edge of its first page, for
 * each job a step lower, and its place in the run in words at the foot.
 */
final class EdgeMark {
    private static final float POINTS_PER_MM = 72f / 25.4f;
    private static final float WIDTH = 8 * POINTS_PER_MM;
    private static final float HEIGHT = 12 * POINTS_PER_MM;
    private static final float FIRST_FROM_TOP = 34 * POINTS_PER_MM;
    private static final int STEPS = 15;
    private static final float LEFT = 170 * POINTS_PER_MM;
    private static final float FROM_BOTTOM = 5.5f * POINTS_PER_MM;
    private static final float SIZE = 8.5f;

    private final PDDocument run;
    private final PDFont font;

    EdgeMark(PDDocument run) {
        this.run = run;
        try {
            font = PDType0Font.load(run, Typeface.shared().bold(), true);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Draws the mark of the job at the given place from 0. */
    void draw(PDPage page, int place, String words) throws IOException {
        float top = page.getMediaBox().getHeight() - FIRST_FROM_TOP - place % STEPS * (HEIGHT + 3);
        try (PDPageContentStream out =
                new PDPageContentStream(run, page, AppendMode.APPEND, true, true)) {
            out.beginMarkedContent(COSName.ARTIFACT);
            out.setNonStrokingColor(0f);
            out.addRect(page.getMediaBox().getWidth() - WIDTH, top - HEIGHT, WIDTH, HEIGHT);
            out.fill();
            out.beginText();
            out.setFont(font, SIZE);
            out.newLineAtOffset(LEFT, FROM_BOTTOM);
            out.showText(words);
            out.endText();
            out.endMarkedContent();
        }
    }
}
