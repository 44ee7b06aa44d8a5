package paperbark.output.pdf;

import java.util.BitSet;
import java.util.List;
import java.util.stream.Stream;

/** Which glyphs of the typeface's styles a document shows. */
final class Glyphs {
    private final List<BitSet> styles = Stream.generate(BitSet::new).limit(Faces.STYLES).toList();

    /** Adds a string of glyph numbers, two bytes each. */
    void add(int style, byte[] string) {
        BitSet used = styles.get(style);
        for (int i = 0; i + 1 < string.length; i += 2) {
            used.set((string[i] & 0xFF) << 8 | string[i + 1] & 0xFF);
        }
    }

    /** Adds what another document shows of a style. */
    void add(int style, BitSet glyphs) {
        styles.get(style).or(glyphs);
    }

    /** The glyph numbers of a style. */
    BitSet of(int style) {
        return styles.get(style);
    }
}
