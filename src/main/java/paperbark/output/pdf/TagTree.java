package paperbark.output.pdf;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;

/**
 * The structure tree of a document (ISO 32000-1, 14.7): elements that say nothing go, and what is
 * left finds its content by new numbers.
 */
final class TagTree {
    private static final Set<String> EMPTY = Set.of("THead", "TFoot", "Span", "Div", "Link");
    private static final Set<String> SAYING_NOTHING = Set.of("Span", "Div");
    private static final List<COSName> SAYINGS =
            List.of(
                    COSName.A,
                    COSName.ALT,
                    COSName.LANG,
                    COSName.T,
                    COSName.E,
                    COSName.ACTUAL_TEXT,
                    COSName.ID,
                    COSName.C);
    private static final List<COSName> ORDER =
            List.of(COSName.P, COSName.PG, COSName.S, COSName.A, COSName.ALT, COSName.K);
    private static final COSName MARKED = COSName.getPDFName("MCR");

    private final COSDictionary root;
    private final List<COSDictionary> elements = new ArrayList<>();

    // For each page, the content that comes behind one in the same element.
    private final Map<COSDictionary, Map<Integer, Integer>> next = new IdentityHashMap<>();

    /** The tree below a root, slimmed. */
    TagTree(COSDictionary root) {
        this.root = root;
        for (COSBase kid : kids(root)) {
            slim((COSDictionary) kid);
        }
    }

    /** All elements, each before what it holds. */
    List<COSDictionary> elements() {
        if (elements.isEmpty()) {
            Deque<COSDictionary> open = new ArrayDeque<>();
            push(root, open);
            while (!open.isEmpty()) {
                COSDictionary element = open.pop();
                elements.add(element);
                push(element, open);
            }
        }
        return elements;
    }

    private static void push(COSDictionary element, Deque<COSDictionary> open) {
        List<COSBase> kids = kids(element);
        for (int i = kids.size() - 1; i >= 0; i--) {
            if (isElement(kids.get(i))) {
                open.push((COSDictionary) kids.get(i));
            }
        }
    }

    static boolean isElement(COSBase kid) {
        return kid instanceof COSDictionary dictionary && dictionary.containsKey(COSName.S);
    }

    /**
     * Puts the elements of papers that were not drawn among those that were, in the order of the
     * papers.
     *
     * @param pages of the document
     * @throws UnknownPlace when what was drawn stands in another order
     */
    void place(List<PaperPart> papers, List<COSDictionary> pages) {
        List<COSBase> tops = kids(root);
        if (tops.size() != 1 || !isElement(tops.get(0))) {
            throw new UnknownPlace();
        }
        COSDictionary top = (COSDictionary) tops.get(0);
        List<COSBase> drawn = new ArrayList<>();
        List<COSBase> all = new ArrayList<>();
        for (PaperPart paper : papers) {
            List<COSBase> own = paper.element().map(TagTree::kids).orElse(List.of());
            drawn.addAll(own);
            all.addAll(own);
            paper.known().ifPresent(k -> all.addAll(k.tags(top, paper.of(pages))));
        }
        if (!drawn.equals(kids(top))) {
            throw new UnknownPlace();
        }
        setKids(top, all);
    }

    static List<COSBase> kids(COSDictionary element) {
        COSBase kids = direct(element.getItem(COSName.K));
        if (!(kids instanceof COSArray array)) {
            return kids == null ? List.of() : List.of(kids);
        }
        List<COSBase> all = new ArrayList<>(array.size());
        for (COSBase kid : array) {
            all.add(direct(kid));
        }
        return all;
    }

    private static COSBase direct(COSBase value) {
        return value instanceof COSObject object ? object.getObject() : value;
    }

    private void slim(COSDictionary element) {
        if (element instanceof KnownElement) {
            return;
        }
        element.removeItem(COSName.TYPE);
        List<COSBase> kids = kids(element);
        kids.stream().filter(TagTree::isElement).forEach(kid -> slim((COSDictionary) kid));
        lie(element, kids);
        List<COSBase> left = new ArrayList<>();
        for (COSBase kid : kids) {
            if (!isElement(kid) || kid instanceof KnownElement) {
                if (!DeadLinks.isOne(kid)) {
                    left.add(content(kid, element));
                }
                continue;
            }
            COSDictionary below = (COSDictionary) kid;
            List<COSBase> theirs = kids(below);
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
            kids(rows).forEach(row -> left.add(moved(row, element)));
        }
        if (left.stream().noneMatch(COSInteger.class::isInstance)) {
            element.removeItem(COSName.PG);
        }
        setKids(element, left);
        order(element);
        remember(element, left);
    }

    /** An element lies where it says, or else where the first of its contents lies. */
    private static void lie(COSDictionary element, List<COSBase> kids) {
        List<COSBase> pages = kids.stream().flatMap(kid -> page(kid).stream()).toList();
        if (!pages.isEmpty()
                && !pages.contains(element.getDictionaryObject(COSName.PG))
                && kids.stream().noneMatch(COSInteger.class::isInstance)) {
            element.setItem(COSName.PG, pages.get(0));
        }
    }

    /** The page of a content that could as well stand right in the element that holds it. */
    private static Optional<COSBase> page(COSBase kid) {
        return kid instanceof COSDictionary part
                        && (part.containsKey(COSName.MCID) || isElement(part) && isPlain(part))
                ? Optional.ofNullable(part.getDictionaryObject(COSName.PG))
                : Optional.empty();
    }

    /** What neighbours have in common comes first, so that it is said once when deflated. */
    private static void order(COSDictionary element) {
        for (COSName name : ORDER) {
            COSBase value = element.getItem(name);
            element.removeItem(name);
            element.setItem(name, value);
        }
    }

    /** The only group of a table's rows, which may stand right in the table. */
    private static boolean isRows(COSBase kid, COSDictionary table) {
        return isElement(kid)
                && "Table".equals(table.getNameAsString(COSName.S))
                && "TBody".equals(((COSDictionary) kid).getNameAsString(COSName.S))
                && SAYINGS.stream().noneMatch(((COSDictionary) kid)::containsKey);
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
        if (!isPlain(below)) {
            return false;
        }
        boolean holdsContent = theirs.stream().anyMatch(kid -> !isElement(kid));
        return !holdsContent
                || mayDissolve(below)
                        && below.getDictionaryObject(COSName.PG)
                                == element.getDictionaryObject(COSName.PG);
    }

    /** Whether its parent takes over what it holds if both lie on the same page. */
    static boolean mayDissolve(COSDictionary element) {
        return isPlain(element) && "Span".equals(element.getNameAsString(COSName.S));
    }

    /** Whether no more is known of it than what it holds. */
    static boolean isPlain(COSDictionary element) {
        return SAYING_NOTHING.contains(element.getNameAsString(COSName.S))
                && SAYINGS.stream().noneMatch(element::containsKey);
    }

    private static COSBase moved(COSBase kid, COSDictionary to) {
        if (isElement(kid)) {
            ((COSDictionary) kid).setItem(COSName.P, to);
        }
        return kid;
    }

    private static void setKids(COSDictionary element, List<COSBase> kids) {
        if (kids.isEmpty()) {
            element.removeItem(COSName.K);
        } else {
            element.setItem(COSName.K, kids.size() == 1 ? kids.get(0) : new COSArray(kids));
        }
    }

    private void remember(COSDictionary element, List<COSBase> kids) {
        COSDictionary page = element.getCOSDictionary(COSName.PG);
        for (int i = 1; i < kids.size(); i++) {
            if (kids.get(i - 1) instanceof COSInteger one
                    && kids.get(i) instanceof COSInteger two) {
                next.computeIfAbsent(page, p -> new java.util.HashMap<>())
                        .put(one.intValue(), two.intValue());
            }
        }
    }

    /** For the contents of a page, the one that comes right behind in the same element. */
    Map<Integer, Integer> next(COSDictionary page) {
        return next.getOrDefault(page, Map.of());
    }

    /**
     * Gives the contents of the pages new numbers.
     *
     * @param numbers for each page the new number of each content; -1 where there is none
     */
    void renumber(Map<COSDictionary, int[]> numbers) {
        for (COSDictionary element : elements()) {
            List<COSBase> left = new ArrayList<>();
            for (COSBase kid : kids(element)) {
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
            setKids(element, left);
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
