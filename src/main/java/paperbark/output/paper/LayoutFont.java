package paperbark.output.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.fontbox.util.BoundingBox;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import paperbark.output.LetterWidths;

/**
 * A style of the typeface for a layout to draw with: letters are looked up, glyphs are named by
 * their numbers, and nothing of it is ever written, since other fonts take its place once the pages
 * are small. The library's own font is built anew for each document, and looks for each letter in
 * several places.
 */
final class LayoutFont extends PDFont {
    private final Letters letters;

    /** What the fonts of all documents have in common. Safe for use by several threads. */
    static final class Letters {
        // The letters of European languages are looked up once.
        private static final int NEAR = 0x250;

        private final PDType0Font whole;
        private final CmapLookup glyphs;
        private final LetterWidths widths;
        private final byte[][] near = new byte[NEAR][];

        Letters(TrueTypeFont font, LetterWidths widths) {
            this.widths = widths;
            try {
                whole = PDType0Font.load(new PDDocument(), font, true);
                glyphs = font.getUnicodeCmapLookup();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            for (int letter = 0; letter < NEAR; letter++) {
                near[letter] = lookedUp(letter);
            }
        }

        private byte[] code(int letter) {
            return letter < NEAR ? near[letter] : lookedUp(letter);
        }

        private byte[] lookedUp(int letter) {
            int glyph = glyphs.getGlyphId(letter);
            return new byte[] {(byte) (glyph >> 8), (byte) glyph};
        }
    }

    /** A font for one document. */
    LayoutFont(Letters letters) {
        super(named(letters.whole.getName()));
        this.letters = letters;
    }

    private static COSDictionary named(String name) {
        COSDictionary font = new COSDictionary();
        font.setItem(COSName.TYPE, COSName.FONT);
        font.setItem(COSName.SUBTYPE, COSName.TYPE0);
        font.setName(COSName.BASE_FONT, name);
        return font;
    }

    @Override
    protected byte[] encode(int letter) {
        byte[] code = letters.code(letter);
        if (code[0] == 0 && code[1] == 0) {
            throw missing(letter);
        }
        return code;
    }

    @Override
    public float getStringWidth(String text) {
        int units = 0;
        for (int i = 0; i < text.length(); ) {
            int letter = text.codePointAt(i);
            int own = letters.widths.of(letter);
            if (own < 0) {
                throw missing(letter);
            }
            units += own;
            i += Character.charCount(letter);
        }
        return units;
    }

    /** The library takes it for a letter that it has to look for elsewhere. */
    private static IllegalArgumentException missing(int letter) {
        return new IllegalArgumentException("no glyph for U+%04X".formatted(letter));
    }

    @Override
    public String getName() {
        return dict.getNameAsString(COSName.BASE_FONT);
    }

    @Override
    public PDFontDescriptor getFontDescriptor() {
        return letters.whole.getFontDescriptor();
    }

    @Override
    public BoundingBox getBoundingBox() throws IOException {
        return letters.whole.getBoundingBox();
    }

    @Override
    public boolean isVertical() {
        return false;
    }

    @Override
    public boolean isEmbedded() {
        return true;
    }

    @Override
    public boolean isDamaged() {
        return false;
    }

    @Override
    public boolean willBeSubset() {
        return false;
    }

    // No layout reads pages, measures codes or embeds fonts.

    @Override
    public int readCode(InputStream in) {
        throw new UnsupportedOperationException();
    }

    @Override
    public float getWidthFromFont(int code) {
        throw new UnsupportedOperationException();
    }

    @Override
    @SuppressWarnings("deprecation")
    public float getHeight(int code) {
        throw new UnsupportedOperationException();
    }

    @Override
    public boolean hasExplicitWidth(int code) {
        throw new UnsupportedOperationException();
    }

    @Override
    protected float getStandard14Width(int code) {
        throw new UnsupportedOperationException();
    }

    @Override
    public void addToSubset(int letter) {
        throw new UnsupportedOperationException();
    }

    @Override
    public void subset() {
        throw new UnsupportedOperationException();
    }
}
