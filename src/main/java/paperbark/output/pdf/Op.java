package paperbark.output.pdf;

import java.util.List;

/** What is done on a page, one step after another. Lengths are in {@link Unit}s. */
sealed interface Op {
    /** A part begins. */
    record Begin(Mark mark) implements Op {}

    /** The part that began last ends. */
    record End() implements Op {}

    /** A rectangle is filled; the corners are ordered. */
    record Box(String colour, Area area) implements Op {}

    /**
     * A shape is filled.
     *
     * @param steps the operators of its path, each of one letter
     * @param lengths what they take, across and up in turns
     */
    record Shape(String colour, String steps, List<Long> lengths) implements Op {
        /** The operators that a shape may have. */
        static final String OPERATORS = "mlch";

        /** How many lengths an operator takes. */
        static int numbers(char operator) {
            return operator == 'h' ? 0 : operator == 'c' ? 6 : 2;
        }
    }

    /**
     * A string is written.
     *
     * @param face the style of the typeface, from 0
     * @param size of the letters
     * @param slant the first four numbers of the text matrix where it does more than move, or ""
     * @param glyphs their numbers, two bytes each
     * @param shown strings of glyph numbers and the gaps between them, as the operator takes them
     */
    record Text(
            String colour,
            int face,
            long size,
            String slant,
            long x,
            long y,
            byte[] glyphs,
            byte[] shown)
            implements Op {
        /** Whether there are gaps between its letters. */
        boolean hasGaps() {
            return shown[0] == '[';
        }

        /** The same with other words that begin elsewhere on the line. */
        Text with(String words, long at) {
            byte[] own = Faces.shared().get(face).glyphs(words);
            return new Text(colour, face, size, slant, at, y, own, Sketch.shown(own));
        }
    }

    /** The state is kept, to be taken up again. */
    record Save() implements Op {}

    /** The state that was kept is taken up again. */
    record Restore() implements Op {}

    /**
     * Anything else, as it is.
     *
     * @param colour the colour that it may need
     * @param kind what must be known of it
     */
    record Other(String colour, byte[] text, Kind kind) implements Op {}

    /** What another step is about. */
    enum Kind {
        /** It sets how lines are drawn. */
        LINES,
        /** It draws what may have lines. */
        DRAWS,
        /** It does neither. */
        CHANGES
    }

    /** A rectangle by its corners. */
    record Area(long left, long bottom, long right, long top) {}
}
