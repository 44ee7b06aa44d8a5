package paperbark.output.paper;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxFontResolver;
import com.openhtmltopdf.pdfboxout.PdfBoxFontResolver.FontGroup;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.font.PDFont;
import paperbark.output.LetterWidths;
import paperbark.output.Typeface;

/** Hands the one typeface of all papers to the renderer of one document. */
final class Fonts {
    static final String FAMILY = "Liberation Sans";

    private static final LayoutFont.Letters REGULAR =
            letters(Typeface.shared().regular(), false, false);
    private static final LayoutFont.Letters BOLD = letters(Typeface.shared().bold(), true, false);
    private static final LayoutFont.Letters ITALIC =
            letters(Typeface.shared().italic(), false, true);
    private static final LayoutFont.Letters BOLD_ITALIC =
            letters(Typeface.shared().boldItalic(), true, true);

    private final List<Style> styles;

    private record Style(OnFirstUse font, int weight, boolean slanted) {}

    Fonts() {
        styles =
                List.of(
                        new Style(new OnFirstUse(REGULAR), 400, false),
                        new Style(new OnFirstUse(BOLD), 700, false),
                        new Style(new OnFirstUse(ITALIC), 400, true),
                        new Style(new OnFirstUse(BOLD_ITALIC), 700, true));
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
        renderer.getSharedContext().setFontResolver(new KnownFonts(resolver));
    }

    /** Which of the styles a font of the document is, from 0 in the order of {@link Typeface}. */
    Optional<Integer> styleOf(COSDictionary font) {
        return IntStream.range(0, styles.size())
                .filter(i -> styles.get(i).font().is(font))
                .boxed()
                .findFirst();
    }

    private static LayoutFont.Letters letters(TrueTypeFont font, boolean bold, boolean slanted) {
        return new LayoutFont.Letters(font, LetterWidths.of(bold, slanted));
    }

    private static final class OnFirstUse extends PDFontSupplier {
        private final LayoutFont.Letters letters;
        private Optional<PDFont> loaded = Optional.empty();

        private OnFirstUse(LayoutFont.Letters letters) {
            super(null);
            this.letters = letters;
        }

        @Override
        public PDFont supply() {
            if (loaded.isEmpty()) {
                loaded = Optional.of(new LayoutFont(letters));
            }
            return loaded.get();
        }

        private boolean is(COSDictionary other) {
            return loaded.isPresent() && loaded.get().getCOSObject() == other;
        }
    }
}
