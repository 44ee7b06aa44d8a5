package paperbark.scan;

import java.util.ArrayList;
import java.util.List;

/**
 * A printed page as it was drawn, from coarse to fine. What lies beyond a sheet of A4 is left out.
 *
 * @param levels at 12.5, 25, 50 and 100 dots an inch
 */
record Drawing(List<Darkness> levels) {
    /** Dots an inch of the finest level. */
    static final int DPI = 100;

    /** Pixels of a sheet of A4 at that. */
    static final int WIDTH = 824;

    static final int HEIGHT = 1168;

    /** Tenths of a millimetre a pixel of the finest level. */
    static final double TENTHS = 254.0 / DPI;

    private static final int LEVELS = 4;

    /** A page that was drawn at 100 dots an inch. */
    static Drawing of(Grey drawn) {
        byte[] sheet = new byte[WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                sheet[y * WIDTH + x] = (byte) drawn.at(x, y);
            }
        }
        return of(Darkness.of(new Grey(WIDTH, HEIGHT, sheet)));
    }

    private static Drawing of(Darkness finest) {
        List<Darkness> levels = new ArrayList<>(List.of(finest));
        while (levels.size() < LEVELS) {
            levels.add(0, levels.get(0).halved());
        }
        levels.set(LEVELS - 1, finest.blurred());
        return new Drawing(List.copyOf(levels));
    }

    Darkness finest() {
        return levels.get(LEVELS - 1);
    }
}
