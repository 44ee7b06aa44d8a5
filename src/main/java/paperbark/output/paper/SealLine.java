package paperbark.output.paper;

import paperbark.output.pdf.PageNote;

/**
 * The ledger's last seal in small print at the foot of a print run's first page: paper cannot be
 * sealed anew, so that it can bear witness.
 */
final class SealLine {
    private static final float POINTS_PER_MM = 72f / 25.4f;
    private static final float SIZE = 6.5f;
    private static final float FROM_LEFT = 18 * POINTS_PER_MM;
    private static final float FROM_BOTTOM = 6 * POINTS_PER_MM;

    private SealLine() {}

    /** The line. */
    static PageNote of(String seal) {
        return new PageNote()
                .words(false, SIZE, FROM_LEFT, FROM_BOTTOM, "Ledger before this batch: " + seal);
    }
}
