package paperbark.output.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/**
 * Head and foot of a page that was drawn, to be put around other papers with other values. A value
 * may differ from the one before in its digits alone: all digits are equally wide, so that nothing
 * moves. Nothing changes it, so several threads may use it.
 */
public final class PageFrame {
    private static final int FIXED = -1;

    private final List<Op> steps;
    private final List<Source> strings;
    private final Map<COSName, Pictures.Picture> pictures;

    /** What a string shows: a value by its place, or the same text on all such pages. */
    private record Source(int value, String text) {
        String with(List<String> values) {
            return value == FIXED ? text : values.get(value);
        }
    }

    private PageFrame(
            List<Op> steps, List<Source> strings, Map<COSName, Pictures.Picture> pictures) {
        this.steps = List.copyOf(steps);
        this.strings = List.copyOf(strings);
        this.pictures = pictures;
    }

    /** A value with all digits alike: what two values have to share. */
    public static String alike(String value) {
        StringBuilder alike = new StringBuilder(value);
        for (int i = 0; i < alike.length(); i++) {
            if (isDigit(alike.charAt(i))) {
                alike.setCharAt(i, '0');
            }
        }
        return alike.toString();
    }

    private static boolean isDigit(char letter) {
        return letter >= '0' && letter <= '9';
    }

    /**
     * Takes head and foot off a page.
     *
     * @param page all of its steps
     * @param drawn the strings on it, in order
     * @param head what is known of head and foot
     * @param own the page itself
     * @return empty where it cannot be told which string shows which value
     */
    static Optional<PageFrame> of(
            List<Op> page, List<PaperPart.Drawn> drawn, PageHead head, COSDictionary own)
            throws IOException {
        Optional<SketchReader.Span> span = SketchReader.Span.of(page);
        if (span.isEmpty()) {
            return Optional.empty();
        }
        List<Op> steps = SketchReader.between(page, List.of());
        List<PaperPart.Drawn> ours = new ArrayList<>(drawn);
        int before = texts(page.subList(0, span.get().from()));
        int within = texts(page.subList(span.get().from(), span.get().to()));
        List<Op> named = steps.stream().filter(SketchReader::needsResources).toList();
        if (texts(page) != drawn.size()
                || named.size() != head.pictures()
                || !named.stream().allMatch(Pictures::isDrawnBy)) {
            return Optional.empty();
        }
        ours.subList(before, before + within).clear();
        List<Source> strings = sources(ours, head.values());
        int next = 0;
        for (Op step : steps) {
            if (step instanceof Op.Text text
                    && (strings.isEmpty() || !SketchReader.says(text, ours.get(next++)))) {
                return Optional.empty();
            }
        }
        return Optional.of(new PageFrame(steps, strings, Pictures.of(named, own)));
    }

    private static int texts(List<Op> steps) {
        return (int) steps.stream().filter(Op.Text.class::isInstance).count();
    }

    /** What each string shows; none where one of them cannot be told. */
    private static List<Source> sources(List<PaperPart.Drawn> strings, List<String> values) {
        Map<String, Integer> seen = new HashMap<>();
        List<Source> sources = new ArrayList<>();
        for (PaperPart.Drawn string : strings) {
            String text = string.words().text();
            int[] equal =
                    IntStream.range(0, values.size())
                            .filter(i -> values.get(i).equals(text))
                            .toArray();
            // Of the same values, such as the last page of as many, each stands once, in order.
            int turn = seen.merge(text, 1, Integer::sum) - 1;
            if (turn < equal.length) {
                sources.add(new Source(equal[turn], text));
            } else if (equal.length > 0 || text.chars().anyMatch(c -> isDigit((char) c))) {
                return List.of();
            } else {
                sources.add(new Source(FIXED, text));
            }
        }
        return sources;
    }

    /** The steps with other values; adds the glyphs that they show. */
    List<Op> with(List<String> values, Glyphs used) {
        List<Op> shown = new ArrayList<>(steps.size());
        int next = 0;
        for (Op step : steps) {
            if (step instanceof Op.Text text) {
                Source source = strings.get(next++);
                Op.Text own =
                        source.value() == FIXED ? text : text.with(source.with(values), text.x());
                used.add(own.face(), own.glyphs());
                shown.add(own);
            } else {
                shown.add(step);
            }
        }
        return shown;
    }

    /** The pictures that it shows, by their names on its page. */
    Map<COSName, Pictures.Picture> pictures() {
        return pictures;
    }

    /** Whether another draws the same with these values. */
    public boolean isSame(PageFrame other, List<String> values) {
        return pictures.equals(other.pictures) && Arrays.equals(print(values), other.print(values));
    }

    private byte[] print(List<String> values) {
        Buffer print = new Buffer();
        with(values, new Glyphs()).forEach(step -> Sketch.print(step, print));
        return print.toByteArray();
    }
}
