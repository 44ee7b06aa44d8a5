package paperbark.output.paper;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxFontResolver;
import com.openhtmltopdf.pdfboxout.PdfBoxFontResolver.FontGroup;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import paperbark.output.Typeface;

/** Hands the one typeface of all papers to the renderer of one document. */
final class Fonts {
    static final String FAMILY = "Liberation Sans";

    private final List<Style> styles;

    private record Style(OnFirstUse font, int weight, boolean slanted) {}

    Fonts(PDDocument document) {
        Typeface typeface = Typeface.shared();
        styles =
                List.of(
                        new Style(new OnFirstUse(document, typeface.regular()), 400, false),
                        new Style(new OnFirstUse(document, typeface.bold()), 700, false),
                        new Style(new OnFirstUse(document, typeface.italic()), 400, true),
                        new Style(new OnFirstUse(document, typeface.boldItalic()), 700, true));
    }

    /** Makes the typeface known to a renderer; a style enters the document when it is used. */
    void register(PdfRendererBuilder builder) {
        for (Style style : styles) {
            FontStyle slant = style.slanted() ? FontStyle.ITALIC : FontStyle.NORMAL;
            builder.useFont(style.font(), FAMILY, style.weight(), slant, true);
        }
    }

    /**
     * Makes the typeface stand in for any other that a firm's style sheet names: there is none that
     * could be embedded, and letters that are not would cost the document its claims.
     */
    void standIn(PdfBoxRenderer renderer) {
        PdfBoxFontResolver resolver =
                (PdfBoxFontResolver) renderer.getSharedContext().getFontResolver();
        for (Style style : styles) {
            IdentValue slant = style.slanted() ? IdentValue.ITALIC : IdentValue.NORMAL;
            resolver.addFont(
                    style.font(), FAMILY, style.weight(), slant, true, FontGroup.FINAL_FALLBACK);
        }
    }

    /** Which of the styles a font of the document is, from 0 in the order of {@link Typeface}. */
    Optional<Integer> styleOf(COSDictionary font) {
        return IntStream.range(0, styles.size())
                .filter(i -> styles.get(i).font().is(font))
                .boxed()
                .findFirst();
    }

    private static final class OnFirstUse extends PDFontSupplier {
        private final PDDocument document;
        private final TrueTypeFont font;
        private Optional<PDFont> loaded = Optional.empty();

        private OnFirstUse(PDDocument document, TrueTypeFont font) {
            super(null);
            this.document = document;
            this.font = font;
        }

        @Override
        public PDFont supply() {
            if (loaded.isEmpty()) {
                loaded = Optional.of(load());
            }
            return loaded.get();
        }

        private boolean is(COSDictionary other) {
            return loaded.isPresent() && loaded.get().getCOSObject() == other;
        }

        private PDFont load() {
            try {
                return PDType0Font.load(document, font, true);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
