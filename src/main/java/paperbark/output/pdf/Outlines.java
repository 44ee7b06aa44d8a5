package paperbark.output.pdf;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.fontbox.ttf.TTFTable;
import org.apache.fontbox.ttf.TrueTypeFont;

/**
 * A font program with some of the outlines of another, each under its number (OpenType 1.9, glyf,
 * loca and the tables that PDF asks for: ISO 32000-1, 9.9). Instructions for coarse screens are
 * left out: they are half of it, and paper is fine.
 */
final class Outlines {
    private static final int COMPOSITE_WORDS = 0x0001;
    private static final int COMPOSITE_SCALE = 0x0008;
    private static final int COMPOSITE_MORE = 0x0020;
    private static final int COMPOSITE_SCALES = 0x0040;
    private static final int COMPOSITE_MATRIX = 0x0080;
    private static final int COMPOSITE_INSTRUCTED = 0x0100;
    private static final int GLYPH_HEAD = 10;

    private final Map<String, byte[]> tables = new LinkedHashMap<>();
    private final ByteBuffer glyf;
    private final ByteBuffer loca;
    private final boolean longPlaces;

    Outlines(TrueTypeFont font) throws IOException {
        for (String name : new String[] {"glyf", "head", "hhea", "hmtx", "loca", "maxp"}) {
            TTFTable table = font.getTableMap().get(name);
            tables.put(name, font.getTableBytes(table));
        }
        glyf = ByteBuffer.wrap(tables.get("glyf"));
        loca = ByteBuffer.wrap(tables.get("loca"));
        longPlaces = ByteBuffer.wrap(tables.get("head")).getShort(50) != 0;
    }

    /** The font program with these glyphs and those that they are made of. */
    byte[] of(BitSet wanted) {
        BitSet glyphs = (BitSet) wanted.clone();
        glyphs.set(0);
        for (int g = glyphs.nextSetBit(0); g >= 0; g = glyphs.nextSetBit(g + 1)) {
            addParts(g, glyphs);
        }
        int count = glyphs.length();
        Buffer outlines = new Buffer();
        ByteBuffer places = ByteBuffer.allocate(4 * (count + 1));
        for (int g = 0; g < count; g++) {
            places.putInt(outlines.size());
            if (glyphs.get(g)) {
                byte[] outline = withoutInstructions(g);
                outlines.write(outline, 0, outline.length);
                while (outlines.size() % 4 != 0) {
                    outlines.write(0);
                }
            }
        }
        places.putInt(outlines.size());
        Map<String, byte[]> own = new LinkedHashMap<>();
        own.put("glyf", outlines.toByteArray());
        own.put("head", head());
        own.put(
                "hhea",
                ByteBuffer.wrap(tables.get("hhea").clone()).putShort(34, (short) count).array());
        own.put("hmtx", widths(glyphs, count));
        own.put("loca", places.array());
        own.put("maxp", most(count));
        return program(own);
    }

    private int place(int glyph) {
        return longPlaces ? loca.getInt(4 * glyph) : (loca.getShort(2 * glyph) & 0xFFFF) * 2;
    }

    private void addParts(int glyph, BitSet glyphs) {
        int at = place(glyph);
        if (place(glyph + 1) == at || glyf.getShort(at) >= 0) {
            return;
        }
        at += GLYPH_HEAD;
        int flags;
        do {
            flags = glyf.getShort(at);
            int part = glyf.getShort(at + 2) & 0xFFFF;
            if (!glyphs.get(part)) {
                glyphs.set(part);
                // The loop that called has passed a part with a lower number.
                addParts(part, glyphs);
            }
            at += partLength(flags);
        } while ((flags & COMPOSITE_MORE) != 0);
    }

    private static int partLength(int flags) {
        int length = 4 + ((flags & COMPOSITE_WORDS) != 0 ? 4 : 2);
        if ((flags & COMPOSITE_SCALE) != 0) {
            return length + 2;
        }
        if ((flags & COMPOSITE_SCALES) != 0) {
            return length + 4;
        }
        return (flags & COMPOSITE_MATRIX) != 0 ? length + 8 : length;
    }

    private byte[] withoutInstructions(int glyph) {
        int from = place(glyph);
        int to = place(glyph + 1);
        if (to == from) {
            return new byte[0];
        }
        byte[] all = new byte[to - from];
        glyf.get(from, all);
        ByteBuffer outline = ByteBuffer.wrap(all);
        int contours = outline.getShort(0);
        if (contours < 0) {
            return composite(outline);
        }
        int lengthAt = GLYPH_HEAD + 2 * contours;
        int instructions = outline.getShort(lengthAt) & 0xFFFF;
        byte[] slim = new byte[all.length - instructions];
        System.arraycopy(all, 0, slim, 0, lengthAt);
        int rest = lengthAt + 2 + instructions;
        System.arraycopy(all, rest, slim, lengthAt + 2, all.length - rest);
        return slim;
    }

    private static byte[] composite(ByteBuffer outline) {
        int at = GLYPH_HEAD;
        int flags;
        do {
            flags = outline.getShort(at);
            outline.putShort(at, (short) (flags & ~COMPOSITE_INSTRUCTED));
            at += partLength(flags);
        } while ((flags & COMPOSITE_MORE) != 0);
        return java.util.Arrays.copyOf(outline.array(), at);
    }

    private byte[] head() {
        ByteBuffer head = ByteBuffer.wrap(tables.get("head").clone());
        head.putInt(8, 0);
        head.putShort(50, (short) 1);
        return head.array();
    }

    private byte[] most(int count) {
        ByteBuffer maxp = ByteBuffer.wrap(tables.get("maxp").clone());
        maxp.putShort(4, (short) count);
        // No storage, functions or instructions are left.
        for (int at = 14; at <= 26; at += 2) {
            maxp.putShort(at, (short) (at == 14 ? 1 : 0));
        }
        return maxp.array();
    }

    private byte[] widths(BitSet glyphs, int count) {
        ByteBuffer from = ByteBuffer.wrap(tables.get("hmtx"));
        int full = ByteBuffer.wrap(tables.get("hhea")).getShort(34) & 0xFFFF;
        ByteBuffer widths = ByteBuffer.allocate(4 * count);
        for (int g = glyphs.nextSetBit(0); g >= 0; g = glyphs.nextSetBit(g + 1)) {
            widths.putShort(4 * g, from.getShort(4 * Math.min(g, full - 1)));
            int bearing = g < full ? 4 * g + 2 : 4 * full + 2 * (g - full);
            widths.putShort(4 * g + 2, from.getShort(bearing));
        }
        return widths.array();
    }

    private static byte[] program(Map<String, byte[]> tables) {
        int entries = tables.size();
        int at = 12 + 16 * entries;
        int size = at + tables.values().stream().mapToInt(t -> t.length + 3 & ~3).sum();
        ByteBuffer program = ByteBuffer.allocate(size);
        int power = Integer.highestOneBit(entries);
        program.putInt(0x00010000).putShort((short) entries).putShort((short) (16 * power));
        program.putShort((short) Integer.numberOfTrailingZeros(power));
        program.putShort((short) (16 * (entries - power)));
        int headAt = 0;
        for (Map.Entry<String, byte[]> table : tables.entrySet()) {
            byte[] body = table.getValue();
            program.put(table.getKey().getBytes(java.nio.charset.StandardCharsets.US_ASCII));
            program.putInt(sum(body)).putInt(at).putInt(body.length);
            System.arraycopy(body, 0, program.array(), at, body.length);
            headAt = table.getKey().equals("head") ? at : headAt;
            at += body.length + 3 & ~3;
        }
        program.putInt(headAt + 8, 0xB1B0AFBA - sum(program.array()));
        return program.array();
    }

    private static int sum(byte[] body) {
        ByteBuffer padded = ByteBuffer.wrap(java.util.Arrays.copyOf(body, body.length + 3 & ~3));
        int sum = 0;
        while (padded.hasRemaining()) {
            sum += padded.getInt();
        }
        return sum;
    }
}
