package paperbark.output;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.BitSet;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The one typeface of all papers, Liberation Sans, parsed once for the life of the program: parsing
 * it for each document costs more than half of the time. Safe for use by several threads.
 */
public final class Typeface {
    private static final Typeface SHARED = new Typeface();
    private static final int BASIC_PLANE = 0x10000;

    private final TrueTypeFont regular = parse("Regular");
    private final TrueTypeFont bold = parse("Bold");
    private final TrueTypeFont italic = parse("Italic");
    private final TrueTypeFont boldItalic = parse("BoldItalic");
    private final BitSet printable = printable();

    private Typeface() {}

    /** The typeface. */
    public static Typeface shared() {
        return SHARED;
    }

    /** The upright style. */
    public TrueTypeFont regular() {
        return regular;
    }

    /** The upright bold style. */
    public TrueTypeFont bold() {
        return bold;
    }

    /** The slanted style. */
    public TrueTypeFont italic() {
        return italic;
    }

    /** The slanted bold style. */
    public TrueTypeFont boldItalic() {
        return boldItalic;
    }

    /** Whether the typeface has a sign for the character. */
    public boolean prints(int codePoint) {
        return printable.get(codePoint);
    }

    private static TrueTypeFont parse(String style) {
        String name = "/liberation/LiberationSans-" + style + ".ttf";
        try (InputStream in = Objects.requireNonNull(Typeface.class.getResourceAsStream(name))) {
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
}
