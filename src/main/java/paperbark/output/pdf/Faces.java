package paperbark.output.pdf;

import java.io.IOException;
import java.util.BitSet;
import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import paperbark.output.Typeface;

/** The styles of the one typeface, under the same names on every page. */
final class Faces {
    static final int REGULAR = 0;
    static final int BOLD = 1;

    /** How many there are. */
    static final int STYLES = 4;

    private static final Faces SHARED = new Faces();

    private final List<Face> faces;

    private Faces() {
        Typeface typeface = Typeface.shared();
        faces =
                List.of(
                        new Face(typeface.regular()),
                        new Face(typeface.bold()),
                        new Face(typeface.italic()),
                        new Face(typeface.boldItalic()));
    }

    static Faces shared() {
        return SHARED;
    }

    /** The style with a number. */
    Face get(int style) {
        return faces.get(style);
    }

    /** Whether every style has a glyph for each letter of a text. */
    boolean haveAll(String text) {
        return faces.stream().allMatch(face -> face.hasAll(text));
    }

    /** The name by which pages ask for a style. */
    static String nameOf(int style) {
        return "F" + (style + 1);
    }

    /** The fonts that show these glyphs, by the names of their styles. */
    COSDictionary fonts(Glyphs glyphs) throws IOException {
        COSDictionary fonts = new COSDictionary();
        COSStream encoding = Codes.encoding();
        for (int style = 0; style < STYLES; style++) {
            BitSet used = glyphs.of(style);
            if (!used.isEmpty()) {
                fonts.setItem(
                        COSName.getPDFName(nameOf(style)), faces.get(style).font(used, encoding));
            }
        }
        return fonts;
    }
}
