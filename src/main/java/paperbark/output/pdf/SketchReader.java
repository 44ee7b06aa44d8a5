package paperbark.output.pdf;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;

/** Takes a sketch of a paper that was drawn, and puts one between head and foot of a page. */
final class SketchReader {
    // Operators that take a name (ISO 32000-1, annex A).
    private static final List<String> NAMING = List.of("Do", "gs", "sh", "cs", "CS", "scn", "SCN");

    private SketchReader() {}

    /** The steps between head and foot: those within the last state that was kept. */
    record Span(int from, int to) {
        static Optional<Span> of(List<Op> steps) {
            int end = steps.size() - 1;
            while (end >= 0 && !(steps.get(end) instanceof Op.Restore)) {
                end--;
            }
            int depth = 0;
            for (int i = end; i >= 0; i--) {
                Op step = steps.get(i);
                depth += step instanceof Op.Restore ? 1 : step instanceof Op.Save ? -1 : 0;
                if (depth == 0) {
                    return Optional.of(new Span(i + 1, end));
                }
            }
            return Optional.empty();
        }
    }

    /** The steps of a page that has head and foot alone, with those of a paper between them. */
    static List<Op> between(List<Op> page, List<Op> paper) {
        Span span = Span.of(page).orElseThrow();
        List<Op> all = new ArrayList<>(page.subList(0, span.from()));
        all.addAll(paper);
        all.addAll(page.subList(span.to(), page.size()));
        return all;
    }

    /**
     * A sketch of a paper.
     *
     * @param steps of each of its pages
     * @param pages themselves
     * @param contents of each of them
     * @return empty where words cannot be exchanged without drawing anew
     */
    static Optional<Sketch> of(
            PaperPart part,
            List<List<Op>> steps,
            List<COSDictionary> pages,
            List<Sketch.Contents> contents) {
        List<Sketch.Page> sketched = new ArrayList<>();
        for (int i = 0; i < part.count(); i++) {
            Optional<Sketch.Page> page = page(steps.get(i), part.strings().get(i), contents.get(i));
            if (page.isEmpty()) {
                return Optional.empty();
            }
            sketched.add(page.get());
        }
        List<COSDictionary> elements = new ArrayList<>();
        for (COSBase kid : part.element().map(TagElement::kids).orElse(List.of())) {
            if (!TagElement.isElement(kid)) {
                return Optional.empty();
            }
            elements.add((COSDictionary) kid);
        }
        return ReadyTags.of(elements, pages).map(tags -> new Sketch(sketched, tags));
    }

    private static Optional<Sketch.Page> page(
            List<Op> all, List<PaperPart.Drawn> drawn, Sketch.Contents contents) {
        Optional<Span> span = Span.of(all);
        if (span.isEmpty()
                || texts(all).size() != drawn.size()
                || all.subList(span.get().from(), span.get().to()).stream()
                        .anyMatch(SketchReader::needsResources)) {
            return Optional.empty();
        }
        List<Op> steps = List.copyOf(all.subList(span.get().from(), span.get().to()));
        List<Op.Text> texts = texts(steps);
        // The foot is drawn before the paper.
        List<PaperPart.Drawn> own = drawn.subList(drawn.size() - texts.size(), drawn.size());
        long left = texts.isEmpty() ? 0 : left(texts.get(0), own.get(0));
        for (int i = 0; i < texts.size(); i++) {
            if (own.get(i).run() == PaperPart.UNKNOWN
                    || left(texts.get(i), own.get(i)) != left
                    || !says(texts.get(i), own.get(i))) {
                return Optional.empty();
            }
        }
        return Optional.of(new Sketch.Page(steps, own, left, contents));
    }

    /** Pictures and the like are said by names that hold on one page alone. */
    static boolean needsResources(Op step) {
        return step instanceof Op.Other other && NAMING.contains(operator(other.text()));
    }

    /** The last word of a step. */
    private static String operator(byte[] step) {
        int to = step.length;
        while (to > 0 && step[to - 1] <= ' ') {
            to--;
        }
        int from = to;
        while (from > 0 && step[from - 1] > ' ') {
            from--;
        }
        return new String(step, from, to - from, StandardCharsets.ISO_8859_1);
    }

    private static List<Op.Text> texts(List<Op> steps) {
        return steps.stream().filter(Op.Text.class::isInstance).map(Op.Text.class::cast).toList();
    }

    private static long left(Op.Text text, PaperPart.Drawn drawn) {
        return text.x() - drawn.words().x() * Unit.OF_THE_LAYOUT;
    }

    static boolean says(Op.Text text, PaperPart.Drawn drawn) {
        return text.slant().isEmpty()
                && !text.hasGaps()
                && Arrays.equals(
                        text.glyphs(),
                        Faces.shared().get(text.face()).glyphs(drawn.words().text()));
    }
}
