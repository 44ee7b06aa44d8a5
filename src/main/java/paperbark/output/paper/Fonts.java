package paperbark.output.paper;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import paperbark.output.Typeface;

/** Hands the one typeface of all papers to the renderer. */
final class Fonts {
    static final String FAMILY = "Liberation Sans";

    private Fonts() {}

    /** Makes the typeface known to a renderer; a style enters the document when it is used. */
    static void register(PdfRendererBuilder builder, PDDocument document) {
        Typeface typeface = Typeface.shared();
        add(builder, document, typeface.regular(), 400, FontStyle.NORMAL);
        add(builder, document, typeface.bold(), 700, FontStyle.NORMAL);
        add(builder, document, typeface.italic(), 400, FontStyle.ITALIC);
        add(builder, document, typeface.boldItalic(), 700, FontStyle.ITALIC);
    }

    private static void add(
            PdfRendererBuilder builder,
            PDDocument document,
            TrueTypeFont font,
            int weight,
            FontStyle style) {
        builder.useFont(new OnFirstUse(document, font), FAMILY, weight, style, true);
    }

    private static final class OnFirstUse extends PDFontSupplier {
        private final PDDocument document;
        private final TrueTypeFont font;

        private OnFirstUse(PDDocument document, TrueTypeFont font) {
            super(null);
            this.document = document;
            this.font = font;
        }

        @Override
        public PDFont supply() {
            try {
                return PDType0Font.load(document, font, true);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
