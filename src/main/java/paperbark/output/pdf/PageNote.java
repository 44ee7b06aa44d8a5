package paperbark.output.pdf;

import java.util.ArrayList;
import java.util.List;

/**
 * Something drawn onto a finished page in black, which is no part of what it says: boxes and words
 * in the typeface of the papers. Lengths are in points from the bottom left.
 */
public final class PageNote {
    private final List<Op.Area> boxes = new ArrayList<>();
    private final List<Words> words = new ArrayList<>();

    private record Words(int style, long size, long left, long bottom, String text) {}

    /** Adds a filled box. */
    public PageNote box(float left, float bottom, float width, float height) {
        boxes.add(
                new Op.Area(
                        Unit.of(left),
                        Unit.of(bottom),
                        Unit.of(left + width),
                        Unit.of(bottom + height)));
        return this;
    }

    /** Adds words of a size on a line. */
    public PageNote words(boolean bold, float size, float left, float bottom, String text) {
        int style = bold ? Faces.BOLD : Faces.REGULAR;
        words.add(new Words(style, Unit.of(size), Unit.of(left), Unit.of(bottom), text));
        return this;
    }

    /** Adds another note. */
    public PageNote and(PageNote other) {
        boxes.addAll(other.boxes);
        words.addAll(other.words);
        return this;
    }

    /**
     * The steps that draw it.
     *
     * @param used is told which glyphs are shown
     * @param before stands before the names of the fonts
     */
    byte[] content(Glyphs used, String before) {
        Buffer out = new Buffer();
        out.text("/Artifact BMC\n0 g\n");
        if (!boxes.isEmpty()) {
            boxes.forEach(area -> Boxes.write(area, out));
            out.text("f\n");
        }
        for (Words line : words) {
            byte[] glyphs = Faces.shared().get(line.style()).glyphs(line.text());
            used.add(line.style(), glyphs);
            out.text("BT\n/").text(before).text(Faces.nameOf(line.style())).text(" ");
            out.length(line.size()).text(" Tf\n");
            out.length(line.left()).text(" ").length(line.bottom()).text(" Td\n");
            out.string(glyphs).text("Tj\nET\n");
        }
        out.text("EMC\n");
        return out.toByteArray();
    }
}
