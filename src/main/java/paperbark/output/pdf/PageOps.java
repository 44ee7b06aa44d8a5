package paperbark.output.pdf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSString;

/** Reads the steps of a page that the layout drew. */
final class PageOps {
    private static final Set<String> LINES = Set.of("w", "J", "j", "M", "d", "RG", "G", "K");
    private static final Set<String> STROKES = Set.of("S", "s", "B", "B*", "b", "b*");
    private static final Set<String> FILLS = Set.of("f", "F", "f*", "n");
    private static final String BLACK = "0 g\n";
    private static final int MOST_NUMBERS = 32;

    private final byte[] text;
    private final Tokens tokens;
    private final Map<COSName, Integer> faces;
    private final COSDictionary marks;
    private final Glyphs used;
    private final List<Op> ops = new ArrayList<>();
    private final Buffer shown = new Buffer(256);
    private final Buffer glyphs = new Buffer(256);

    // What stands before the next operator.
    private final double[] numbers = new double[MOST_NUMBERS];
    private final long[] lengths = new long[MOST_NUMBERS];
    private int count;
    private COSBase other;
    private COSName tag;
    private int begin = -1;

    private final PathSketch path = new PathSketch();

    private String colour = BLACK;
    private final Deque<String> colours = new ArrayDeque<>();
    private int face;
    private long size;
    private String slant = "";
    private long x;
    private long y;

    /**
     * A reader.
     *
     * @param text the content of the page
     * @param faces which style each font of the page is
     * @param marks the property lists of the page by name
     * @param used is told which glyphs of which style are shown
     */
    PageOps(byte[] text, Map<COSName, Integer> faces, COSDictionary marks, Glyphs used) {
        this.text = text;
        tokens = new Tokens(text, 0, text.length);
        this.faces = faces;
        this.marks = marks;
        this.used = used;
    }

    /** The steps, in order. */
    List<Op> read() {
        while (tokens.hasNext()) {
            if (begin < 0) {
                begin = tokens.at();
            }
            if (tokens.isNumber()) {
                numbers[count++] = tokens.real();
            } else if (tokens.isObject()) {
                tag = other instanceof COSName name ? name : tag;
                other = tokens.object();
            } else {
                step(tokens.word());
                count = 0;
                other = null;
                tag = null;
                begin = -1;
            }
        }
        return ops;
    }

    private void step(String operator) {
        switch (operator) {
            case "m", "l", "h", "re", "c", "v", "y", "W", "W*" ->
                    path.add(operator, lengths(), begin);
            case "BT", "ET" -> slant = "";
            case "Tf" -> {
                face = faces.get((COSName) other);
                size = Unit.of(numbers[0]);
            }
            case "Tm" -> place();
            case "Tj", "TJ" -> ops.add(shown());
            case "BDC" -> ops.add(new Op.Begin(mark()));
            case "BMC" -> ops.add(new Op.Begin(Mark.LAYOUT));
            case "EMC" -> ops.add(new Op.End());
            case "q" -> {
                colours.push(colour);
                ops.add(new Op.Save());
            }
            case "Q" -> {
                colour = colours.pop();
                ops.add(new Op.Restore());
            }
            case "rg", "g", "k" -> colour = colour(operator);
            default -> rest(operator);
        }
    }

    private void rest(String operator) {
        boolean strokes = STROKES.contains(operator);
        if (strokes || FILLS.contains(operator)) {
            if (operator.equals("f") && path.isBoxes()) {
                path.boxes().forEach(area -> ops.add(new Op.Box(colour, area)));
            } else {
                Op.Kind kind = strokes ? Op.Kind.DRAWS : Op.Kind.CHANGES;
                ops.add(
                        path.shape(text, operator, colour)
                                .map(Op.class::cast)
                                .orElseGet(
                                        () ->
                                                new Op.Other(
                                                        colour, path.text(text, operator), kind)));
            }
            path.clear();
            return;
        }
        byte[] raw = Arrays.copyOfRange(text, begin, tokens.here());
        Op.Kind kind =
                LINES.contains(operator)
                        ? Op.Kind.LINES
                        : operator.equals("Do") ? Op.Kind.DRAWS : Op.Kind.CHANGES;
        ops.add(new Op.Other(colour, raw, kind));
    }

    private long[] lengths() {
        for (int i = 0; i < count; i++) {
            lengths[i] = Unit.of(numbers[i]);
        }
        return lengths;
    }

    private void place() {
        boolean straight = numbers[0] == 1 && numbers[1] == 0 && numbers[2] == 0 && numbers[3] == 1;
        slant = "";
        if (!straight) {
            slant =
                    String.format(
                            Locale.ROOT,
                            "%.5f %.5f %.5f %.5f ",
                            numbers[0],
                            numbers[1],
                            numbers[2],
                            numbers[3]);
        }
        x = Unit.of(numbers[4]);
        y = Unit.of(numbers[5]);
    }

    private Op.Text shown() {
        shown.reset();
        glyphs.reset();
        if (other instanceof COSArray several) {
            shown.write('[');
            for (COSBase part : several) {
                if (part instanceof COSString string) {
                    string(string);
                } else {
                    shown.text(gap((COSNumber) part));
                }
            }
            shown.text("]TJ\n");
        } else {
            string((COSString) other);
            shown.text("Tj\n");
        }
        return new Op.Text(
                colour, face, size, slant, x, y, glyphs.toByteArray(), shown.toByteArray());
    }

    private static String gap(COSNumber number) {
        return number instanceof COSInteger whole
                ? whole.longValue() + " "
                : String.format(Locale.ROOT, "%.2f ", number.floatValue());
    }

    private void string(COSString string) {
        byte[] own = string.getBytes();
        used.add(face, own);
        glyphs.write(own, 0, own.length);
        shown.string(own);
    }

    private Mark mark() {
        COSDictionary says =
                other instanceof COSDictionary direct
                        ? direct
                        : marks.getCOSDictionary((COSName) other);
        int content = says.getInt(COSName.MCID, -1);
        if (content >= 0) {
            return Mark.of(tag.getName(), content);
        }
        return says.getNameAsString(COSName.TYPE, "").equals("Pagination")
                ? Mark.PAGINATION
                : Mark.LAYOUT;
    }

    private String colour(String operator) {
        String said =
                new String(text, begin, tokens.at() - begin, StandardCharsets.US_ASCII).strip();
        return Colours.SHORT.computeIfAbsent(said, words -> Colours.shortened(words, operator));
    }
}
