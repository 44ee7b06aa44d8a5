package paperbark.output.form;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * Text made to fit a box: shrunk to a readable minimum, and cut with a visible sign where even that
 * is too large.
 *
 * @param size in points
 * @param lines from top to bottom
 * @param whole whether nothing was cut
 */
record TextFit(float size, List<String> lines, boolean whole) {
    /** Smaller print is not read on a fax or a scan, in points. */
    static final float SMALLEST = 6;

    /** Distance of lines, as a multiple of the size. */
    static final float LEADING = 1.15f;

    private static final float STEP = 0.25f;
    private static final String CUT = "…";

    /** One line in the width, in points. */
    static TextFit line(PDFont font, String text, float wanted, float width) {
        String line = text.replaceAll("\\s+", " ");
        float natural = width(font, line, 1);
        float smallest = Math.min(wanted, SMALLEST);
        float size = natural <= 0 ? wanted : Math.min(wanted, width / natural);
        if (size >= smallest) {
            return new TextFit(size, List.of(line), true);
        }
        return new TextFit(smallest, List.of(cut(font, line, smallest, width)), false);
    }

    /** Lines broken between words in width and height, in points. */
    static TextFit block(PDFont font, String text, float wanted, float width, float height) {
        float smallest = Math.min(wanted, SMALLEST);
        for (float size = wanted; size > smallest; size -= STEP) {
            List<String> lines = wrapped(font, text, size, width);
            if (lines.size() * size * LEADING <= height) {
                return new TextFit(size, lines, true);
            }
        }
        List<String> lines = wrapped(font, text, smallest, width);
        int room = Math.max(1, (int) (height / (smallest * LEADING)));
        if (lines.size() <= room) {
            return new TextFit(smallest, lines, true);
        }
        List<String> kept = new ArrayList<>(lines.subList(0, room));
        kept.set(room - 1, cut(font, kept.get(room - 1) + CUT + CUT, smallest, width));
        return new TextFit(smallest, kept, false);
    }

    /** Width of a text in points. */
    static float width(PDFont font, String text, float size) {
        try {
            return font.getStringWidth(text) / 1000 * size;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String cut(PDFont font, String line, float size, float width) {
        String kept = line;
        while (!kept.isEmpty() && width(font, kept + CUT, size) > width) {
            kept = kept.substring(0, kept.offsetByCodePoints(kept.length(), -1));
        }
        return kept + CUT;
    }

    private static List<String> wrapped(PDFont font, String text, float size, float width) {
        List<String> lines = new ArrayList<>();
        for (String paragraph : text.split("\\R", -1)) {
            StringBuilder line = new StringBuilder();
            for (String word : paragraph.strip().split("\\s+")) {
                String longer = line.isEmpty() ? word : line + " " + word;
                if (width(font, longer, size) <= width) {
                    line.replace(0, line.length(), longer);
                    continue;
                }
                if (!line.isEmpty()) {
                    lines.add(line.toString());
                }
                line.replace(0, line.length(), brokenOff(font, word, size, width, lines));
            }
            lines.add(line.toString());
        }
        return lines;
    }

    /** The end of a word that is wider than a line; the parts before it become lines. */
    private static String brokenOff(
            PDFont font, String word, float size, float width, List<String> lines) {
        String rest = word;
        while (width(font, rest, size) > width && rest.codePointCount(0, rest.length()) > 1) {
            int end = rest.length();
            while (end > rest.offsetByCodePoints(0, 1)
                    && width(font, rest.substring(0, end), size) > width) {
                end = rest.offsetByCodePoints(end, -1);
            }
            lines.add(rest.substring(0, end));
            rest = rest.substring(end);
        }
        return rest;
    }
}
