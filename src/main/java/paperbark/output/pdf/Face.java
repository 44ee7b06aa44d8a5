package paperbark.output.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.OS2WindowsMetricsTable;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.fontbox.util.BoundingBox;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * A style of the typeface as a document carries it: only the glyphs that it shows, each under its
 * number in the whole font, so that the same page fits any such font that has its glyphs.
 */
final class Face {
    private static final int ITALIC = 64;
    private static final int SYMBOLIC = 4;
    private static final int TAG = 6;

    // The letters of European languages are looked up once.
    private static final int NEAR = 0x250;

    // Packs of a batch show much the same glyphs; some 10 KB each.
    private static final int MOST_KNOWN = 32;

    private final TrueTypeFont font;
    private final Outlines outlines;
    private final CmapLookup letters;
    private final int[] near = new int[NEAR];

    private final Map<BitSet, Carried> known =
            new LinkedHashMap<>(MOST_KNOWN, 0.75f, true) {
                @Override
                protected boolean removeEldestEntry(Map.Entry<BitSet, Carried> eldest) {
                    return size() > MOST_KNOWN;
                }
            };

    /**
     * What a font that shows some glyphs is made of; the streams are deflated.
     *
     * @param program its outlines
     * @param length of the outlines, inflated
     * @param letters which letter each glyph stands for
     */
    private record Carried(byte[] program, int length, byte[] letters) {}

    Face(TrueTypeFont font) {
        this.font = font;
        try {
            outlines = new Outlines(font);
            letters = font.getUnicodeCmapLookup();
            Arrays.setAll(near, letters::getGlyphId);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The glyph numbers of a text, two bytes each. */
    byte[] glyphs(String text) {
        byte[] glyphs = new byte[2 * text.codePointCount(0, text.length())];
        int at = 0;
        for (int i = 0; i < text.length(); ) {
            int letter = text.codePointAt(i);
            int glyph = glyph(letter);
            i += Character.charCount(letter);
            glyphs[at++] = (byte) (glyph >> 8);
            glyphs[at++] = (byte) glyph;
        }
        return glyphs;
    }

    /** The name of the style. */
    String name() throws IOException {
        return font.getName();
    }

    /**
     * Whether a glyph stands for a letter and is so many thousandths of its size wide.
     *
     * @param words the letter; empty if it stands for none
     */
    boolean shows(int glyph, String words, int width) throws IOException {
        boolean meant = words.isEmpty() ? letter(glyph) == 0 : glyph(words.codePointAt(0)) == glyph;
        return meant && width == thousandths(font.getAdvanceWidth(glyph));
    }

    /** Whether it has a glyph for each letter of a text. */
    boolean hasAll(String text) {
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            if (glyph(text.codePointAt(i)) == 0) {
                return false;
            }
        }
        return true;
    }

    private int glyph(int letter) {
        return letter < NEAR ? near[letter] : letters.getGlyphId(letter);
    }

    /**
     * The font as a dictionary of a document that shows these glyphs.
     *
     * @param encoding what says how pages name them
     */
    COSDictionary font(BitSet glyphs, COSStream encoding) throws IOException {
        String name = tag(glyphs) + "+" + name();
        Carried carried = carried(glyphs);
        COSDictionary descendant = new COSDictionary();
        descendant.setItem(COSName.TYPE, COSName.FONT);
        descendant.setItem(COSName.SUBTYPE, COSName.CID_FONT_TYPE2);
        descendant.setName(COSName.BASE_FONT, name);
        descendant.setItem(COSName.CIDSYSTEMINFO, Codes.system());
        descendant.setItem(COSName.FONT_DESC, descriptor(name, carried));
        descendant.setItem(COSName.CID_TO_GID_MAP, COSName.IDENTITY);
        descendant.setItem(COSName.W, widths(glyphs));
        COSDictionary type0 = new COSDictionary();
        type0.setItem(COSName.TYPE, COSName.FONT);
        type0.setItem(COSName.SUBTYPE, COSName.TYPE0);
        type0.setName(COSName.BASE_FONT, name);
        type0.setItem(COSName.ENCODING, encoding);
        COSArray descendants = new COSArray();
        descendants.add(descendant);
        type0.setItem(COSName.DESCENDANT_FONTS, descendants);
        type0.setItem(COSName.TO_UNICODE, Streams.ofDeflated(carried.letters()));
        return type0;
    }

    private Carried carried(BitSet glyphs) {
        synchronized (known) {
            Carried before = known.get(glyphs);
            if (before != null) {
                return before;
            }
        }
        byte[] program = outlines.of(glyphs);
        Carried made =
                new Carried(Deflated.of(program), program.length, Deflated.of(unicode(glyphs)));
        synchronized (known) {
            known.put((BitSet) glyphs.clone(), made);
        }
        return made;
    }

    /** Six letters that follow from the glyphs (ISO 32000-1, 9.6.4). */
    private static String tag(BitSet glyphs) {
        StringBuilder tag = new StringBuilder();
        int hash = glyphs.hashCode() & Integer.MAX_VALUE;
        for (int i = 0; i < TAG; i++) {
            tag.append((char) ('A' + hash % 26));
            hash /= 26;
        }
        return tag.toString();
    }

    private COSArray widths(BitSet glyphs) throws IOException {
        COSArray widths = new COSArray();
        for (int first = glyphs.nextSetBit(0); first >= 0; ) {
            int end = glyphs.nextClearBit(first);
            COSArray run = new COSArray();
            for (int glyph = first; glyph < end; glyph++) {
                run.add(COSInteger.get(thousandths(font.getAdvanceWidth(glyph))));
            }
            widths.add(COSInteger.get(first));
            widths.add(run);
            first = glyphs.nextSetBit(end);
        }
        return widths;
    }

    /** The glyphs of a font, by the widths that {@link #font} gave it. */
    static BitSet glyphs(COSArray widths) {
        BitSet glyphs = new BitSet();
        for (int i = 0; i < widths.size(); i += 2) {
            int first = widths.getInt(i);
            glyphs.set(first, first + ((COSArray) widths.getObject(i + 1)).size());
        }
        return glyphs;
    }

    private COSFloat exact(float units) throws IOException {
        return new COSFloat(units * 1000f / font.getUnitsPerEm());
    }

    private long thousandths(float units) throws IOException {
        return Math.round(units * 1000.0 / font.getUnitsPerEm());
    }

    private COSDictionary descriptor(String name, Carried carried) throws IOException {
        OS2WindowsMetricsTable os2 = font.getOS2Windows();
        // In thousandths already.
        BoundingBox box = font.getFontBBox();
        COSDictionary descriptor = new COSDictionary();
        descriptor.setItem(COSName.TYPE, COSName.FONT_DESC);
        descriptor.setName(COSName.FONT_NAME, name);
        boolean slanted = (os2.getFsSelection() & 1) != 0;
        descriptor.setInt(COSName.FLAGS, slanted ? ITALIC | SYMBOLIC : SYMBOLIC);
        descriptor.setInt(COSName.FONT_WEIGHT, os2.getWeightClass());
        descriptor.setInt(COSName.ITALIC_ANGLE, Math.round(font.getPostScript().getItalicAngle()));
        COSArray bounds = new COSArray();
        bounds.add(new COSFloat(box.getLowerLeftX()));
        bounds.add(new COSFloat(box.getLowerLeftY()));
        bounds.add(new COSFloat(box.getUpperRightX()));
        bounds.add(new COSFloat(box.getUpperRightY()));
        descriptor.setItem(COSName.FONT_BBOX, bounds);
        descriptor.setItem(COSName.ASCENT, exact(font.getHorizontalHeader().getAscender()));
        descriptor.setItem(COSName.DESCENT, exact(font.getHorizontalHeader().getDescender()));
        // Readers find the lines of a text by such heights, so they are not rounded.
        descriptor.setItem(COSName.CAP_HEIGHT, exact(os2.getCapHeight()));
        descriptor.setItem(COSName.XHEIGHT, exact(os2.getHeight()));
        // As PDFBox works it out: the tables of the font do not have it.
        descriptor.setLong(COSName.STEM_V, Math.round(box.getWidth() * 0.13));
        COSStream file = Streams.ofDeflated(carried.program());
        file.setInt(COSName.LENGTH1, carried.length());
        descriptor.setItem(COSName.FONT_FILE2, file);
        return descriptor;
    }

    /** Which letter each glyph stands for (ISO 32000-1, 9.10.3). */
    private byte[] unicode(BitSet glyphs) {
        StringBuilder map =
                new StringBuilder(
                        "/CIDInit /ProcSet findresource begin 12 dict begin begincmap\n"
                                + "/CIDSystemInfo<</Registry(Adobe)/Ordering(UCS)/Supplement 0>>def\n"
                                + "/CMapName/Adobe-Identity-UCS def/CMapType 2 def\n"
                                + Codes.SPACE
                                + "endcodespacerange\n");
        List<String> lines = new ArrayList<>();
        for (int g = glyphs.nextSetBit(0); g >= 0; ) {
            int first = g;
            int letter = letter(first);
            // A range ends with the last byte of a code.
            while (glyphs.get(g + 1)
                    && letter(g + 1) == letter + g + 1 - first
                    && Codes.isLetter(g + 1) == Codes.isLetter(first)
                    && Codes.of(g) % 256 < 255) {
                g++;
            }
            if (letter > 0) {
                lines.add("<%s><%s><%s>\n".formatted(Codes.hex(first), Codes.hex(g), hex(letter)));
            }
            g = glyphs.nextSetBit(g + 1);
        }
        // At most a hundred in a section.
        for (int from = 0; from < lines.size(); from += 100) {
            List<String> section = lines.subList(from, Math.min(from + 100, lines.size()));
            map.append(section.size()).append(" beginbfrange\n");
            section.forEach(map::append);
            map.append("endbfrange\n");
        }
        map.append("endcmap CMapName currentdict/CMap defineresource pop end end\n");
        return map.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private int letter(int glyph) {
        List<Integer> all = letters.getCharCodes(glyph);
        return all == null ? 0 : all.get(0);
    }

    private static String hex(int letter) {
        StringBuilder hex = new StringBuilder();
        for (char half : Character.toChars(letter)) {
            hex.append("%04X".formatted((int) half));
        }
        return hex.toString();
    }
}
