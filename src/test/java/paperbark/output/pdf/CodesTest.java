package paperbark.output.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.fontbox.cmap.CMap;
import org.apache.fontbox.cmap.CMapParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.junit.jupiter.api.Test;
import paperbark.output.Typeface;

class CodesTest {
    @Test
    void namesLettersByThemselves() {
        byte[] glyphs = Faces.shared().get(Faces.REGULAR).glyphs("Tank (no. 7)");

        assertThat(new Buffer().string(glyphs).toString()).isEqualTo("(Tank \\(no. 7\\))");
    }

    @Test
    void leadsFromEveryCodeToItsGlyph() throws Exception {
        CMap map = new CMapParser().parse(Codes.encoding().createView());
        Set<Integer> values = new HashSet<>();

        for (int glyph = 0; glyph < glyphs(); glyph++) {
            int code = Codes.of(glyph);
            byte[] bytes =
                    Codes.isLetter(glyph)
                            ? new byte[] {(byte) code}
                            : new byte[] {(byte) (code >> 8), (byte) code};
            assertThat(map.toCID(bytes)).as("code %04X", code).isEqualTo(glyph);
            assertThat(values.add(code)).as("value of %04X", code).isTrue();
        }
    }

    private static int glyphs() throws IOException {
        Typeface all = Typeface.shared();
        int most = 0;
        for (TrueTypeFont style :
                List.of(all.regular(), all.bold(), all.italic(), all.boldItalic())) {
            most = Math.max(most, style.getNumberOfGlyphs());
        }
        return most;
    }
}
