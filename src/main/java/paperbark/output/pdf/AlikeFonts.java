package paperbark.output.pdf;

import java.io.IOException;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.fontbox.cmap.CMap;
import org.apache.fontbox.cmap.CMapParser;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * Fonts on pages that the layout did not draw which are a style of the typeface all the same, such
 * as that in which a form was filled. Their outlines need not lie in the document a second time.
 */
final class AlikeFonts {
    private final Map<COSDictionary, Integer> styles = new LinkedHashMap<>();
    private final Set<COSDictionary> seen = new HashSet<>();
    private final Glyphs used;

    /**
     * None yet.
     *
     * @param used is told which glyphs of which style such fonts show
     */
    AlikeFonts(Glyphs used) {
        this.used = used;
    }

    /** Finds those that are among what a page or a drawing on it draws with. */
    void find(COSDictionary drawing) throws IOException {
        COSDictionary resources = drawing.getCOSDictionary(COSName.RESOURCES);
        if (resources == null || !seen.add(resources)) {
            return;
        }
        COSDictionary fonts = resources.getCOSDictionary(COSName.FONT);
        if (fonts != null) {
            for (COSName name : fonts.keySet()) {
                COSDictionary font = fonts.getCOSDictionary(name);
                if (font != null && seen.add(font)) {
                    look(font);
                }
            }
        }
        COSDictionary drawings = resources.getCOSDictionary(COSName.XOBJECT);
        if (drawings != null) {
            for (COSName name : drawings.keySet()) {
                find(drawings.getCOSDictionary(name));
            }
        }
    }

    private void look(COSDictionary font) throws IOException {
        COSArray below = font.getCOSArray(COSName.DESCENDANT_FONTS);
        String name = font.getNameAsString(COSName.BASE_FONT, "");
        if (!COSName.IDENTITY_H.equals(font.getDictionaryObject(COSName.ENCODING))
                || below == null
                || !(below.getObject(0) instanceof COSDictionary descendant)
                || !(font.getDictionaryObject(COSName.TO_UNICODE) instanceof COSStream letters)) {
            return;
        }
        CMap map = new CMapParser().parse(letters.createView());
        for (int style = 0; style < Faces.STYLES; style++) {
            Face face = Faces.shared().get(style);
            if (name.endsWith("+" + face.name())) {
                BitSet glyphs = new BitSet();
                if (isAlike(face, descendant.getCOSArray(COSName.W), map, glyphs)) {
                    used.add(style, glyphs);
                    styles.put(font, style);
                }
            }
        }
    }

    /** Whether each glyph stands for the same letter of the same width. */
    private static boolean isAlike(Face face, COSArray widths, CMap letters, BitSet glyphs)
            throws IOException {
        if (widths == null || widths.size() % 2 > 0) {
            return false;
        }
        for (int i = 0; i < widths.size(); i += 2) {
            COSBase run = widths.getObject(i + 1);
            if (!(run instanceof COSArray several)) {
                return false;
            }
            for (int k = 0; k < several.size(); k++) {
                int glyph = widths.getInt(i) + k;
                String words = Optional.ofNullable(letters.toUnicode(glyph, 2)).orElse("");
                if (!face.shows(glyph, words, several.getInt(k))) {
                    return false;
                }
                glyphs.set(glyph);
            }
        }
        return true;
    }

    /** Lets them take their outlines from the fonts of the pages that were drawn. */
    void share(COSDictionary fonts) {
        styles.forEach(
                (font, style) -> {
                    COSName name = COSName.getPDFName(Faces.nameOf(style));
                    COSArray below =
                            fonts.getCOSDictionary(name).getCOSArray(COSName.DESCENDANT_FONTS);
                    font.setItem(COSName.DESCENDANT_FONTS, new COSArray(below.toList()));
                });
    }
}
