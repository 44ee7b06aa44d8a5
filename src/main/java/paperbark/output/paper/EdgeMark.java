package paperbark.output.paper;

import org.apache.pdfbox.pdmodel.common.PDRectangle;
import paperbark.output.pdf.PageNote;

/**
 * Shows in a printed stack where a job begins: a black bar at the right edge of its first page, for
 * each job a step lower, and its place in the run in words at the foot.
 */
final class EdgeMark {
    private static final float POINTS_PER_MM = 72f / 25.4f;
    private static final float WIDTH = 8 * POINTS_PER_MM;
    private static final float HEIGHT = 12 * POINTS_PER_MM;
    private static final float FIRST_FROM_TOP = 34 * POINTS_PER_MM;
    private static final int STEPS = 15;
    private static final float LEFT = 170 * POINTS_PER_MM;
    private static final float FROM_BOTTOM = 5.5f * POINTS_PER_MM;
    private static final float SIZE = 8.5f;

    private EdgeMark() {}

    /** The mark of the job at the given place from 0. */
    static PageNote of(int place, String words) {
        PDRectangle page = PDRectangle.A4;
        float top = page.getHeight() - FIRST_FROM_TOP - place % STEPS * (HEIGHT + 3);
        return new PageNote()
                .box(page.getWidth() - WIDTH, top - HEIGHT, WIDTH, HEIGHT)
                .words(true, SIZE, LEFT, FROM_BOTTOM, words);
    }
}
