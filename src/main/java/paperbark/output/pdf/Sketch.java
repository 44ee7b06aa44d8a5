package paperbark.output.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;

/**
 * A paper that was drawn once, to be shown again with other words: the steps of its pages without
 * head and foot, and its elements of the structure tree. Nothing changes it, so several threads may
 * use it.
 */
public final class Sketch {
    private final List<Page> pages;
    private final ReadyTags tags;
    // What the strings show, where words were put in.
    private final Glyphs glyphs;

    /**
     * A run of words on a line.
     *
     * @param text its letters
     * @param x where it begins, in the layout's own unit from the left edge of the content
     */
    public record Words(String text, int x) {}

    /**
     * The steps of a page.
     *
     * @param steps what is drawn between head and foot
     * @param strings that are drawn, in order
     * @param left where the content begins, in {@link Unit}s
     * @param contents that are drawn
     */
    record Page(List<Op> steps, List<PaperPart.Drawn> strings, long left, Contents contents) {}

    /**
     * The contents of a page.
     *
     * @param next for each content the one that comes behind it in the same element; -1 where there
     *     is none, as for those beyond its end
     * @param numbers the number of each content once the page is small; -1 where there is none
     */
    record Contents(int[] next, int[] numbers) {
        boolean follows(int before, int after) {
            return before < next.length && next[before] == after;
        }
    }

    Sketch(List<Page> pages, ReadyTags tags) {
        this(pages, tags, new Glyphs());
    }

    private Sketch(List<Page> pages, ReadyTags tags, Glyphs glyphs) {
        this.pages = List.copyOf(pages);
        this.tags = tags;
        this.glyphs = glyphs;
    }

    /**
     * Whether its strings can be exchanged for these words, as the layout would have drawn them.
     */
    public static boolean canShow(List<Words> words) {
        return words.stream().allMatch(w -> Faces.shared().haveAll(w.text()));
    }

    /**
     * The same paper with other words.
     *
     * @param words as many as it has, in the same order
     */
    public Sketch with(List<Words> words) {
        Glyphs shown = new Glyphs();
        return new Sketch(
                pages.stream().map(page -> with(page, words, shown)).toList(), tags, shown);
    }

    private static Page with(Page page, List<Words> words, Glyphs shown) {
        List<Op> steps = new ArrayList<>(page.steps().size());
        List<PaperPart.Drawn> strings = new ArrayList<>(page.strings().size());
        for (Op step : page.steps()) {
            if (step instanceof Op.Text text) {
                PaperPart.Drawn before = page.strings().get(strings.size());
                boolean kept = before.run() == PaperPart.KEPT;
                Words own = kept ? before.words() : words.get(before.run());
                strings.add(new PaperPart.Drawn(before.run(), own));
                Op.Text said =
                        own.equals(before.words())
                                ? text
                                : text.with(own.text(), page.left() + own.x() * Unit.OF_THE_LAYOUT);
                shown.add(said.face(), said.glyphs());
                steps.add(said);
            } else {
                steps.add(step);
            }
        }
        return new Page(steps, strings, page.left(), page.contents());
    }

    /** Glyphs as the steps of a page show them. */
    static byte[] shown(byte[] glyphs) {
        Buffer shown = new Buffer(glyphs.length + 16);
        shown.string(glyphs);
        return shown.text("Tj\n").toByteArray();
    }

    /** Adds the glyphs of the words that were put in. */
    void addTo(Glyphs used) {
        for (int style = 0; style < Faces.STYLES; style++) {
            used.add(style, glyphs.of(style));
        }
    }

    /** How many pages it has. */
    int pageCount() {
        return pages.size();
    }

    /** One of its pages, from 0. */
    Page page(int page) {
        return pages.get(page);
    }

    /** Its elements, new for each document. */
    List<KnownElement> tags(COSDictionary parent, List<COSDictionary> on) {
        return tags.below(parent, on);
    }

    /** Whether another sketch draws the same with the same words. */
    public boolean isSame(Sketch other) {
        return Arrays.equals(print(), other.print());
    }

    private byte[] print() {
        Buffer print = new Buffer();
        for (Page page : pages) {
            page.steps().forEach(step -> print(step, print));
            print.text(page.strings().toString()).number(page.left());
        }
        return print.text(tags.toString()).toByteArray();
    }

    static void print(Op step, Buffer print) {
        if (step instanceof Op.Text text) {
            print.text(text.colour()).number(text.face()).text(" ").number(text.size());
            print.text(text.slant()).number(text.x()).text(" ").number(text.y());
            print.write(text.shown(), 0, text.shown().length);
        } else if (step instanceof Op.Other other) {
            print.text(other.colour()).text(other.kind().name());
            print.write(other.text(), 0, other.text().length);
        } else {
            print.text(step.toString());
        }
    }
}
