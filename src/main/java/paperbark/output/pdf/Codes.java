package paperbark.output.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;

/**
 * How pages name the glyphs of the typeface: the common letters by their ASCII code, one byte each,
 * and every other glyph by two, the first of them above 127 (ISO 32000-1, 9.7.5). Most text is half
 * as long this way. Some readers tell codes by their value alone, so that no two have the same.
 */
final class Codes {
    // The typeface has the letters of ASCII in their order.
    private static final int FIRST_LETTER = ' ';
    private static final int LAST_LETTER = '~';
    private static final int FIRST_GLYPH = 3;
    private static final int LAST_GLYPH = FIRST_GLYPH + LAST_LETTER - FIRST_LETTER;
    private static final int GLYPHS_IN_A_RANGE = 256;
    private static final int RANGES = 11;

    /**
     * How long a code is. The numbers of the glyphs are no codes, but some readers look their
     * letters up under them and want them to be some.
     */
    static final String SPACE = "3 begincodespacerange<20><7E><0000><0AFF><8000><8AFF>";

    private static final int WIDE = 0x8000;

    private static final COSName CMAP = COSName.getPDFName("CMap");
    private static final String NAME = "Paperbark-Letters";

    // The same in every document.
    private static final byte[] MAP = Deflated.of(map().getBytes(StandardCharsets.US_ASCII));

    private Codes() {}

    /** Whether a glyph has a code of one byte. */
    static boolean isLetter(int glyph) {
        return glyph >= FIRST_GLYPH && glyph <= LAST_GLYPH;
    }

    /** The code of a glyph. */
    static int of(int glyph) {
        return isLetter(glyph) ? glyph - FIRST_GLYPH + FIRST_LETTER : WIDE | glyph;
    }

    /** The code of a glyph in hexadecimal digits. */
    static String hex(int glyph) {
        return (isLetter(glyph) ? "%02X" : "%04X").formatted(of(glyph));
    }

    /** What fonts say of these codes. */
    static COSStream encoding() throws IOException {
        COSStream encoding = Streams.ofDeflated(MAP);
        encoding.setItem(COSName.TYPE, CMAP);
        encoding.setName("CMapName", NAME);
        encoding.setItem(COSName.CIDSYSTEMINFO, system());
        return encoding;
    }

    /** The collection of glyphs: those of the font, by their numbers. */
    static COSDictionary system() {
        COSDictionary system = new COSDictionary();
        system.setItem(COSName.REGISTRY, new COSString("Adobe"));
        system.setItem(COSName.ORDERING, new COSString("Identity"));
        system.setInt(COSName.SUPPLEMENT, 0);
        return system;
    }

    private static String map() {
        StringBuilder map =
                new StringBuilder(
                        "/CIDInit /ProcSet findresource begin 12 dict begin begincmap\n"
                                + "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)"
                                + "/Supplement 0>>def\n/CMapName/"
                                + NAME
                                + " def/CMapType 1 def/WMode 0 def\n"
                                + SPACE
                                + "endcodespacerange\n");
        map.append(RANGES + 1).append(" begincidrange\n");
        map.append("<%02X><%02X>%d\n".formatted(FIRST_LETTER, LAST_LETTER, FIRST_GLYPH));
        // A range ends with the last byte of a code.
        for (int range = 0; range < RANGES; range++) {
            int first = range * GLYPHS_IN_A_RANGE;
            int code = WIDE | first;
            map.append("<%04X><%04X>%d\n".formatted(code, code + GLYPHS_IN_A_RANGE - 1, first));
        }
        map.append("endcidrange\nendcmap CMapName currentdict/CMap defineresource pop end end\n");
        return map.toString();
    }
}
