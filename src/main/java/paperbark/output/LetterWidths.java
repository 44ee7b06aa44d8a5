package paperbark.output;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TrueTypeFont;

/** How wide the letters of one style of the typeface are. Safe for use by several threads. */
public final class LetterWidths {
    private static final List<LetterWidths> STYLES =
            List.of(
                    new LetterWidths(Typeface.shared().regular()),
                    new LetterWidths(Typeface.shared().bold()),
                    new LetterWidths(Typeface.shared().italic()),
                    new LetterWidths(Typeface.shared().boldItalic()));
    private static final int NONE = -1;

    // The letters of European languages are looked up once.
    private static final int NEAR = 0x250;

    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final float scale;
    private final int[] near = new int[NEAR];

    private LetterWidths(TrueTypeFont font) {
        this.font = font;
        try {
            glyphs = font.getUnicodeCmapLookup();
            scale = 1000f / font.getUnitsPerEm();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Arrays.setAll(near, this::lookedUp);
    }

    /** The widths of a style. */
    public static LetterWidths of(boolean bold, boolean slanted) {
        return STYLES.get((bold ? 1 : 0) + (slanted ? 2 : 0));
    }

    /**
     * The width of a letter in thousandths of the size, as a font in a document gives it; negative
     * where the style has no such letter.
     */
    public int of(int letter) {
        return letter < NEAR ? near[letter] : lookedUp(letter);
    }

    private int lookedUp(int letter) {
        int glyph = glyphs.getGlyphId(letter);
        try {
            return glyph == 0 ? NONE : Math.round(font.getAdvanceWidth(glyph) * scale);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
