package paperbark.scan;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import paperbark.output.PageMark;
import paperbark.output.paper.ScanMark;
import paperbark.output.paper.SignBox;

/** Looks at one page of a pile. */
final class PageLook {
    private static final double INCHES_HIGH = 11.69;
    private static final int ENOUGH_DPI = 150;
    private static final double EMPTY = 0.0006;
    private static final int AROUND = 60;
    private static final double TENTHS_HIGH = 2970;
    private static final double SAME_SCALE = 0.007;

    private final Printed printed;

    PageLook(Printed printed) {
        this.printed = printed;
    }

    SeenPage at(int number, Grey full) throws IOException {
        int by = reduction(full);
        Grey page = full.reduced(by);
        Optional<Found> found = MarkReader.read(page);
        if (found.isEmpty() && isEmpty(page)) {
            return new SeenPage(number, true, Optional.empty(), "", 0, false, List.of());
        }
        if (found.isEmpty() && by > 1) {
            found = MarkReader.read(full).map(f -> new Found(f.mark(), f.pose().inReduced(by)));
        }
        return found.isEmpty()
                ? unplaced(number, 0, SeenPage.NO_MARK)
                : marked(number, page, found.get());
    }

    /** How many pixels of a picture are one where that is sharp enough to read it. */
    static int reduction(Grey full) {
        return Math.max(1, (int) (dpi(full) / ENOUGH_DPI));
    }

    private static double dpi(Grey page) {
        return Math.max(page.width(), page.height()) / INCHES_HIGH;
    }

    private static SeenPage unplaced(int number, int turns, String why) {
        return new SeenPage(number, false, Optional.empty(), why, turns, false, List.of());
    }

    private SeenPage marked(int number, Grey page, Found found) throws IOException {
        PageMark mark = found.mark();
        int turns = found.pose().quarterTurns();
        List<PrintedPage> places;
        synchronized (printed) {
            places = printed.of(mark);
        }
        if (places.size() != 1) {
            String job = "Its mark names page " + mark.page() + " of job " + mark.job();
            return unplaced(
                    number,
                    turns,
                    places.isEmpty()
                            ? job + ", which was not printed here."
                            : job + ", of which several batches printed one.");
        }
        return measured(number, page, scaled(page, mark, found.pose()), places.get(0));
    }

    /** The picture's height tells the scale better than the small mark, where it is that of A4. */
    private static Pose scaled(Grey page, PageMark mark, Pose pose) {
        double whole = Math.max(page.width(), page.height()) / TENTHS_HIGH;
        ScanMark.Spot spot = ScanMark.spot(mark.text());
        double middle = spot.size() / 2.0;
        return Math.abs(whole / pose.scale() - 1) < SAME_SCALE
                ? pose.scaled(whole, spot.left() + middle, spot.top() + middle)
                : pose;
    }

    private static SeenPage measured(int number, Grey page, Pose pose, PrintedPage place)
            throws IOException {
        List<SeenPage.BlankBox> blank = new ArrayList<>();
        boolean looked = true;
        for (SignBox box : place.paper().boxes()) {
            if (box.packPage() != place.packPage()) {
                continue;
            }
            BoxInk.Seen seen = BoxInk.measure(page, pose, box);
            looked &= seen.found();
            if (seen.isBlank()) {
                blank.add(new SeenPage.BlankBox(box, picture(page, seen.pose(), box)));
            }
        }
        return new SeenPage(
                number, false, Optional.of(place), "", pose.quarterTurns(), looked, blank);
    }

    /** The box, upright, at about 100 dots an inch. */
    private static byte[] picture(Grey page, Pose pose, SignBox box) throws IOException {
        int width = (box.width() + 2 * AROUND) * 2 / 5;
        int height = (box.height() + 2 * AROUND) * 2 / 5;
        byte[] pixels = new byte[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double px = box.left() - AROUND + x * 2.5;
                double py = box.top() - AROUND + y * 2.5;
                pixels[y * width + x] = (byte) page.at((int) pose.x(px, py), (int) pose.y(px, py));
            }
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new Grey(width, height, pixels).image(), "png", out);
        return out.toByteArray();
    }

    /** Whether next to nothing on the page, but for its edges, is darker than the paper. */
    static boolean isEmpty(Grey page) {
        Grey small =
                page.part(
                                page.width() / 20,
                                page.height() / 20,
                                page.width() * 9 / 10,
                                page.height() * 9 / 10)
                        .reduced(Math.max(1, (int) (dpi(page) / 50)));
        int paper = small.quantile(500);
        int dark = 0;
        for (byte pixel : small.pixels()) {
            dark += (pixel & 0xff) < paper - 40 ? 1 : 0;
        }
        return dark < small.pixels().length * EMPTY;
    }
}
