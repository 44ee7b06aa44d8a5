package paperbark.output.form;

import java.util.Arrays;

/** A text spread over the cells of a comb: one letter a cell. */
final class Combs {
    private static final int CUT = '…';

    private Combs() {}

    /**
     * The letters, at most as many as there are cells; where the text is too long its spaces and
     * then its hyphens give way, and what is still too long ends with a sign that it was cut.
     */
    static int[] letters(String text, int cells) {
        int[] kept = squeezed(text, cells);
        if (kept.length <= cells) {
            return kept;
        }
        int[] cut = Arrays.copyOf(kept, cells);
        cut[cells - 1] = CUT;
        return cut;
    }

    /** Whether every letter finds a cell. */
    static boolean fits(String text, int cells) {
        return squeezed(text, cells).length <= cells;
    }

    private static int[] squeezed(String text, int cells) {
        String squeezed = text.replaceAll("\\s+", " ");
        for (String gap : new String[] {" ", "-"}) {
            if (squeezed.codePointCount(0, squeezed.length()) > cells) {
                squeezed = squeezed.replace(gap, "");
            }
        }
        return squeezed.codePoints().toArray();
    }
}
