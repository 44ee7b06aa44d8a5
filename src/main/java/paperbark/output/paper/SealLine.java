package paperbark.output.paper;

import java.io.IOException;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import paperbark.output.Typeface;

/**
 * The ledger's last seal in small print at the foot of a print run's first page: paper cannot be
 * sealed anew, so that it can bear witness.
 */
final class SealLine {
    private static final float POINTS_PER_MM = 72f / 25.4f;
    private static final float SIZE = 6.5f;
    private static final float FROM_LEFT = 18 * POINTS_PER_MM;
    private static final float FROM_BOTTOM = 6 * POINTS_PER_MM;

    private SealLine() {}

    /** Draws it on a finished page. */
    static void draw(PDDocument document, PDPage page, String seal) throws IOException {
        PDFont font = PDType0Font.load(document, Typeface.shared().regular(), true);
        try (PDPageContentStream out =
                new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
            out.beginMarkedContent(COSName.ARTIFACT);
            out.setNonStrokingColor(0f);
            out.beginText();
            out.setFont(font, SIZE);
            out.newLineAtOffset(FROM_LEFT, FROM_BOTTOM);
            out.showText("Ledger before this batch: " + seal);
            out.endText();
            out.endMarkedContent();
        }
    }
}
