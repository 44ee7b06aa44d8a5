package paperbark.output.paper;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.BitSet;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The one typeface of all papers, parsed once for the life of the program: parsing it for each
 * document costs more than half of the time. Safe for use by several threads.
 */
final class Fonts {
    static final String FAMILY = "Liberation Sans";
    private static final Fonts SHARED = new Fonts();
    private static final int BASIC_PLANE = 0x10000;

    private final TrueTypeFont regular = parse("Regular");
    private final TrueTypeFont bold = parse("Bold");
    private final TrueTypeFont italic = parse("Italic");
    private final TrueTypeFont boldItalic = parse("BoldItalic");
    private final BitSet printable = printable();

    private Fonts() {}

    static Fonts shared() {
        return SHARED;
    }

    private static TrueTypeFont parse(String style) {
        String name = "/liberation/LiberationSans-" + style + ".ttf";
        try (InputStream in = Objects.requireNonNull(Fonts.class.getResourceAsStream(name))) {
            TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in));
            // Ligatures are not worth their time: a fifth of the whole run.
            font.setEnableGsub(false);
            return font;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private BitSet printable() {
        try {
            CmapLookup plain = regular.getUnicodeCmapLookup();
            CmapLookup strong = bold.getUnicodeCmapLookup();
            BitSet found = new BitSet(BASIC_PLANE);
            for (int c = 0; c < BASIC_PLANE; c++) {
                found.set(c, plain.getGlyphId(c) != 0 && strong.getGlyphId(c) != 0);
            }
            return found;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether the typeface has a sign for the character. */
    boolean prints(int codePoint) {
        return printable.get(codePoint);
    }

    /** Makes the typeface known to a renderer; a style enters the document when it is used. */
    void register(PdfRendererBuilder builder, PDDocument document) {
        add(builder, document, regular, 400, FontStyle.NORMAL);
        add(builder, document, bold, 700, FontStyle.NORMAL);
        add(builder, document, italic, 400, FontStyle.ITALIC);
        add(builder, document, boldItalic, 700, FontStyle.ITALIC);
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
