package paperbark.output.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;

/**
 * The structure tree of a document (ISO 32000-1, 14.7): elements that say nothing go, and what is
 * left finds its content by new numbers.
 */
final class TagTree {
    private static final Set<String> EMPTY = Set.of("THead", "TFoot", "Span", "Div", "Link");
    private static final List<COSName> ORDER =
            List.of(COSName.P, COSName.PG, COSName.S, COSName.A, COSName.ALT, COSName.K);
    private static final COSName MARKED = COSName.getPDFName("MCR");

    private static final int[] NONE = {};

    private final COSDictionary root;
    private final List<COSDictionary> elements = new ArrayList<>();

    // For each page, the content that comes behind one in the same element.
    private final Map<COSDictionary, int[]> next = new IdentityHashMap<>();

    /** The tree below a root, slimmed. */
    TagTree(COSDictionary root) {
        this.root = root;
        for (COSBase kid : TagElement.kids(root)) {
            slim((COSDictionary) kid);
        }
    }

    /** All elements, each before what it holds. */
    List<COSDictionary> elements() {
        if (elements.isEmpty()) {
            TagElement.addBelow(root, elements);
        }
        return elements;
    }

    /**
     * Puts the elements of papers that were not drawn among those that were, in the order of the
     * papers.
     *
     * @param pages of the document
     * @throws UnknownPlace when what was drawn stands in another order
     */
    void place(List<PaperPart> papers, List<COSDictionary> pages) {
        List<COSBase> tops = TagElement.kids(root);
        if (tops.size() != 1 || !TagElement.isElement(tops.get(0))) {
            throw new UnknownPlace();
        }
        COSDictionary top = (COSDictionary) tops.get(0);
        List<COSBase> drawn = new ArrayList<>();
        List<COSBase> all = new ArrayList<>();
        for (PaperPart paper : papers) {
            List<COSBase> own = paper.element().map(TagElement::kids).orElse(List.of());
            drawn.addAll(own);
            all.addAll(own);
            paper.known().ifPresent(k -> all.addAll(k.tags(top, paper.of(pages))));
        }
        if (!drawn.equals(TagElement.kids(top))) {
            throw new UnknownPlace();
        }
        TagElement.setKids(top, all);
    }

    private void slim(COSDictionary element) {
        if (element instanceof KnownElement) {
            return;
        }
        element.removeItem(COSName.TYPE);
        List<COSBase> kids = TagElement.kids(element);
        for (COSBase kid : kids) {
            if (TagElement.isElement(kid)) {
                slim((COSDictionary) kid);
            }
        }
        lie(element, kids);
        List<COSBase> left = new ArrayList<>(kids.size());
        for (COSBase kid : kids) {
            if (!TagElement.isElement(kid) || kid instanceof KnownElement) {
                if (!DeadLinks.isOne(kid)) {
                    left.add(content(kid, element));
                }
                continue;
            }
            COSDictionary below = (COSDictionary) kid;
            List<COSBase> theirs = TagElement.kids(below);
            if (theirs.isEmpty() && EMPTY.contains(below.getNameAsString(COSName.S))) {
                continue;
            }
            if (saysNothing(below, element, theirs)) {
                theirs.forEach(kept -> left.add(moved(kept, element)));
            } else {
                left.add(below);
            }
        }
        if (left.size() == 1 && isRows(left.get(0), element)) {
            COSDictionary rows = (COSDictionary) left.remove(0);
            TagElement.kids(rows).forEach(row -> left.add(moved(row, element)));
        }
        if (!TagElement.holdsNumber(left)) {
            element.removeItem(COSName.PG);
        }
        TagElement.setKids(element, left);
        order(element);
        remember(element, left);
    }

    /** An element lies where it says, or else where the first of its contents lies. */
    private static void lie(COSDictionary element, List<COSBase> kids) {
        COSBase own = element.getDictionaryObject(COSName.PG);
        COSBase first = null;
        for (COSBase kid : kids) {
            COSBase page = mayStandAbove(kid) ? ((COSDictionary) kid).getItem(COSName.PG) : null;
            first = first == null ? TagElement.direct(page) : first;
            if (kid instanceof COSInteger || page != null && TagElement.direct(page) == own) {
                return;
            }
        }
        if (first != null) {
            element.setItem(COSName.PG, first);
        }
    }

    /** Whether a content could as well stand right in the element that holds it. */
    private static boolean mayStandAbove(COSBase kid) {
        return kid instanceof COSDictionary part
                && (part.containsKey(COSName.MCID)
                        || TagElement.isElement(part) && TagElement.isPlain(part));
    }

    /** What neighbours have in common comes first, so that it is said once when deflated. */
    private static void order(COSDictionary element) {
        for (COSName name : ORDER) {
            COSBase value = element.getItem(name);
            if (value != null) {
                element.removeItem(name);
                element.setItem(name, value);
            }
        }
    }

    /** The only group of a table's rows, which may stand right in the table. */
    private static boolean isRows(COSBase kid, COSDictionary table) {
        return TagElement.isElement(kid)
                && "Table".equals(table.getNameAsString(COSName.S))
                && "TBody".equals(((COSDictionary) kid).getNameAsString(COSName.S))
                && !TagElement.says((COSDictionary) kid);
    }

    /** A mark on the element's own page is told by its number alone. */
    private static COSBase content(COSBase kid, COSDictionary element) {
        if (kid instanceof COSDictionary mark
                && MARKED.equals(mark.getCOSName(COSName.TYPE))
                && mark.getDictionaryObject(COSName.PG)
                        == element.getDictionaryObject(COSName.PG)) {
            return COSInteger.get(mark.getInt(COSName.MCID));
        }
        return kid;
    }

    /**
     * A span or division of which no more is known than what it holds can give that to its parent.
     */
    private static boolean saysNothing(
            COSDictionary below, COSDictionary element, List<COSBase> theirs) {
        if (!TagElement.isPlain(below)) {
            return false;
        }
        return !TagElement.holdsContent(theirs)
                || TagElement.mayDissolve(below)
                        && below.getDictionaryObject(COSName.PG)
                                == element.getDictionaryObject(COSName.PG);
    }

    private static COSBase moved(COSBase kid, COSDictionary to) {
        if (TagElement.isElement(kid)) {
            ((COSDictionary) kid).setItem(COSName.P, to);
        }
        return kid;
    }

    private void remember(COSDictionary element, List<COSBase> kids) {
        COSDictionary page = element.getCOSDictionary(COSName.PG);
        for (int i = 1; i < kids.size(); i++) {
            if (kids.get(i - 1) instanceof COSInteger one
                    && kids.get(i) instanceof COSInteger two) {
                remember(page, one.intValue(), two.intValue());
            }
        }
    }

    private void remember(COSDictionary page, int one, int two) {
        int[] before = next.getOrDefault(page, NONE);
        int[] all = before;
        if (one >= before.length) {
            all = Arrays.copyOf(before, Math.max(one + 1, 2 * before.length));
            Arrays.fill(all, before.length, all.length, -1);
            next.put(page, all);
        }
        all[one] = two;
    }

    /** For each content of a page, the one that comes right behind in the same element; or -1. */
    int[] next(COSDictionary page) {
        return next.getOrDefault(page, NONE);
    }

    /**
     * Gives the contents of the pages new numbers.
     *
     * @param numbers for each page the new number of each content; -1 where there is none
     */
    void renumber(Map<COSDictionary, int[]> numbers) {
        for (COSDictionary element : elements()) {
            List<COSBase> left = new ArrayList<>();
            for (COSBase kid : TagElement.kids(element)) {
                if (kid instanceof COSInteger content) {
                    int[] own = numbers.get(element.getCOSDictionary(COSName.PG));
                    int number = own == null ? content.intValue() : own[content.intValue()];
                    if (number >= 0) {
                        left.add(COSInteger.get(number));
                    }
                } else if (!isGone(kid, numbers)) {
                    left.add(kid);
                }
            }
            TagElement.setKids(element, left);
        }
    }

    private static boolean isGone(COSBase kid, Map<COSDictionary, int[]> numbers) {
        if (kid instanceof COSDictionary mark && mark.containsKey(COSName.MCID)) {
            int[] own = numbers.get(mark.getCOSDictionary(COSName.PG));
            if (own != null) {
                mark.setInt(COSName.MCID, own[mark.getInt(COSName.MCID)]);
                mark.removeItem(COSName.TYPE);
                mark.setItem(COSName.TYPE, MARKED);
                return mark.getInt(COSName.MCID) < 0;
            }
        }
        return false;
    }
}
