package paperbark.output.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;

/**
 * A paper's elements of the structure tree as they are written, without a document: slim, and with
 * gaps for the numbers that a document gives to them, to their parent and to its pages.
 */
final class ReadyTags {
    private static final int PARENT = -1;

    private final List<Branch> branches;

    private ReadyTags(List<Branch> branches) {
        this.branches = branches;
    }

    /**
     * An element and all below it.
     *
     * @param kind what it is
     * @param page on which it lies, from 0, where its parent could take over what it holds; else -1
     * @param elements itself first, each before what it holds
     * @param contents that they hold
     */
    record Branch(COSName kind, int page, List<Text> elements, List<Content> contents) {}

    /**
     * A content of a page.
     *
     * @param page from 0
     * @param number of the content on the page
     * @param element that holds it, from 0
     */
    record Content(int page, int number, int element) {}

    /**
     * The text of an element.
     *
     * @param gaps where it has a digit in place of a number
     * @param of whose number: of an element of the branch from 0, of the parent -1, of a page from
     *     -2 downwards
     */
    record Text(byte[] text, int[] gaps, int[] of) {
        /**
         * Writes the element.
         *
         * @param first the number of the branch
         * @param parent the number of what holds the branch
         * @param pages the number of each page
         */
        void write(int first, int parent, IntUnaryOperator pages, Buffer out) {
            int from = 0;
            for (int i = 0; i < gaps.length; i++) {
                out.write(text, from, gaps[i] - from);
                int what = of[i];
                out.number(
                        what >= 0
                                ? first + what
                                : what == PARENT ? parent : pages.applyAsInt(PARENT - 1 - what));
                from = gaps[i] + 1;
            }
            out.write(text, from, text.length - from);
        }
    }

    /**
     * Takes elements over as they are once the pages are small.
     *
     * @param pages on which they lie
     * @return empty where they hold what belongs to their document, or their place in it matters
     */
    static Optional<ReadyTags> of(List<COSDictionary> elements, List<COSDictionary> pages) {
        Set<COSBase> own = Collections.newSetFromMap(new IdentityHashMap<>());
        own.addAll(pages);
        for (COSDictionary top : elements) {
            if (TagElement.mayDissolve(top) || !TagElement.isFree(top, own)) {
                return Optional.empty();
            }
        }
        List<Branch> branches = new ArrayList<>();
        Reader reader = new Reader(elements, pages);
        elements.forEach(top -> branches.add(reader.branch(top)));
        return Optional.of(new ReadyTags(List.copyOf(branches)));
    }

    /** Reads elements that are slim. */
    private static final class Reader {
        // Of an element in place of its number: 1 what holds all of them, then the pages.
        private static final int ABOVE = 1;

        private final Map<COSBase, Integer> numbers = new IdentityHashMap<>();
        private final Map<COSBase, Integer> pages = new IdentityHashMap<>();
        private final int firstElement;
        private final Buffer numbered = new Buffer();
        private final ObjectText writer =
                new ObjectText(numbered, object -> numbers.getOrDefault(object, 0));
        private final Buffer text = new Buffer();

        private Reader(List<COSDictionary> tops, List<COSDictionary> pages) {
            tops.forEach(top -> numbers.put(top.getDictionaryObject(COSName.P), ABOVE));
            for (COSDictionary page : pages) {
                this.pages.put(page, this.pages.size());
                numbers.put(page, ABOVE + this.pages.size());
            }
            firstElement = ABOVE + pages.size() + 1;
        }

        private Branch branch(COSDictionary top) {
            List<COSDictionary> all = new ArrayList<>();
            all.add(top);
            TagElement.addBelow(top, all);
            for (int i = 0; i < all.size(); i++) {
                numbers.put(all.get(i), firstElement + i);
            }
            List<Text> texts = new ArrayList<>(all.size());
            List<Content> contents = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                texts.add(text(all.get(i)));
                contents(all.get(i), i, contents);
            }
            int page = TagElement.isPlain(top) ? pageOf(top) : -1;
            return new Branch(
                    top.getCOSName(COSName.S), page, List.copyOf(texts), List.copyOf(contents));
        }

        private int pageOf(COSDictionary place) {
            return pages.getOrDefault(place.getDictionaryObject(COSName.PG), -1);
        }

        private void contents(COSDictionary element, int number, List<Content> contents) {
            for (COSBase kid : TagElement.kids(element)) {
                if (kid instanceof COSInteger content) {
                    contents.add(new Content(pageOf(element), content.intValue(), number));
                } else if (kid instanceof COSDictionary mark && mark.containsKey(COSName.MCID)) {
                    contents.add(new Content(pageOf(mark), mark.getInt(COSName.MCID), number));
                }
            }
        }

        private Text text(COSDictionary element) {
            numbered.reset();
            text.reset();
            writer.write(element);
            List<Integer> gaps = new ArrayList<>();
            List<Integer> of = new ArrayList<>();
            Moving.Numbers gap =
                    number -> {
                        gaps.add(text.size());
                        of.add(what(number));
                        return 0;
                    };
            try {
                Moving.copy(
                        new PackReader.Piece(numbered.toByteArray(), 0, numbered.size()),
                        gap,
                        text);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            return new Text(
                    text.toByteArray(),
                    gaps.stream().mapToInt(i -> i).toArray(),
                    of.stream().mapToInt(i -> i).toArray());
        }

        private int what(int number) {
            if (number == ABOVE) {
                return PARENT;
            }
            return number < firstElement ? PARENT - (number - ABOVE) : number - firstElement;
        }
    }

    /** The elements below a parent, each in place of its branch. */
    List<KnownElement> below(COSDictionary parent, List<COSDictionary> pages) {
        return branches.stream().map(branch -> new KnownElement(branch, parent, pages)).toList();
    }

    /** The elements with their gaps, for comparing. */
    @Override
    public String toString() {
        Buffer all = new Buffer();
        for (Branch branch : branches) {
            for (Text text : branch.elements()) {
                all.write(text.text(), 0, text.text().length);
                all.text(Arrays.toString(text.of()));
            }
        }
        return all.toString();
    }
}
