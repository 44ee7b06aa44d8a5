package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.BitSet;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;
import paperbark.output.Typeface;

/** Outlines against those that FontBox reads out of the whole font. */
class FontsTest {
    private static final TrueTypeFont WHOLE = Typeface.shared().regular();

    private static BitSet glyphs(String text) throws IOException {
        BitSet glyphs = new BitSet();
        for (int letter : text.codePoints().toArray()) {
            glyphs.set(WHOLE.getUnicodeCmapLookup().getGlyphId(letter));
        }
        return glyphs;
    }

    private static TrueTypeFont read(byte[] program) throws IOException {
        return new TTFParser(true).parse(new RandomAccessReadBuffer(program));
    }

    @Test
    void keepTheOutlineAndWidthOfEachGlyphUnderItsNumber() throws IOException {
        BitSet wanted = glyphs("Aa Zz 09 Äéñçőž—€½");
        TrueTypeFont some = read(new Outlines(WHOLE).of(wanted));
        for (int glyph : wanted.stream().toArray()) {
            GlyphData whole = WHOLE.getGlyph().getGlyph(glyph);
            GlyphData own = some.getGlyph().getGlyph(glyph);
            if (whole == null) {
                assertThat(own).isNull();
                continue;
            }
            assertThat(own.getPath().getBounds2D()).isEqualTo(whole.getPath().getBounds2D());
            assertThat(new java.awt.geom.Area(own.getPath()))
                    .matches(area -> area.equals(new java.awt.geom.Area(whole.getPath())));
            assertThat(some.getAdvanceWidth(glyph)).isEqualTo(WHOLE.getAdvanceWidth(glyph));
        }
    }

    @Test
    void holdNothingElseAndAreMuchSmaller() throws IOException {
        TrueTypeFont some = read(new Outlines(WHOLE).of(glyphs("A")));
        int letter = WHOLE.getUnicodeCmapLookup().getGlyphId('B');
        assertThat(letter).isGreaterThan(some.getNumberOfGlyphs() - 1);
        byte[] hundred =
                new Outlines(WHOLE)
                        .of(glyphs("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"));
        assertThat(hundred.length).isLessThan(10_000);
    }
}
