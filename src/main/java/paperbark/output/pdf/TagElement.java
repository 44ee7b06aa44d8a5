package paperbark.output.pdf;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;

/** What an element of the structure tree holds and says (ISO 32000-1, 14.7.2). */
final class TagElement {
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

    // Contents that the tree holds as objects, such as links, belong to one document alone.
    private static final List<COSName> OF_A_DOCUMENT = List.of(COSName.OBJ, COSName.STRUCT_PARENT);

    private TagElement() {}

    /** Whether it is an element, and no content. */
    static boolean isElement(COSBase kid) {
        return kid instanceof COSDictionary dictionary && dictionary.containsKey(COSName.S);
    }

    /** What an element holds, in order. */
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

    /** The object that a reference stands for. */
    static COSBase direct(COSBase value) {
        return value instanceof COSObject object ? object.getObject() : value;
    }

    /** Has an element hold these. */
    static void setKids(COSDictionary element, List<COSBase> kids) {
        if (kids.isEmpty()) {
            element.removeItem(COSName.K);
        } else {
            element.setItem(COSName.K, kids.size() == 1 ? kids.get(0) : new COSArray(kids));
        }
    }

    /** Whether one of them is a content of the page of the element that holds it. */
    static boolean holdsNumber(List<COSBase> kids) {
        for (COSBase kid : kids) {
            if (kid instanceof COSInteger) {
                return true;
            }
        }
        return false;
    }

    /** Whether one of them is no element. */
    static boolean holdsContent(List<COSBase> kids) {
        for (COSBase kid : kids) {
            if (!isElement(kid)) {
                return true;
            }
        }
        return false;
    }

    /** Whether its parent takes over what it holds if both lie on the same page. */
    static boolean mayDissolve(COSDictionary element) {
        return isPlain(element) && "Span".equals(element.getNameAsString(COSName.S));
    }

    /** Whether no more is known of it than what it holds. */
    static boolean isPlain(COSDictionary element) {
        return SAYING_NOTHING.contains(element.getNameAsString(COSName.S)) && !says(element);
    }

    /** Whether more is known of it than what it holds. */
    static boolean says(COSDictionary element) {
        for (COSName saying : SAYINGS) {
            if (element.containsKey(saying)) {
                return true;
            }
        }
        return false;
    }

    /** Adds all elements below one, each before what it holds. */
    static void addBelow(COSDictionary top, List<COSDictionary> elements) {
        Deque<COSDictionary> open = new ArrayDeque<>();
        push(top, open);
        while (!open.isEmpty()) {
            COSDictionary element = open.pop();
            elements.add(element);
            push(element, open);
        }
    }

    private static void push(COSDictionary element, Deque<COSDictionary> open) {
        COSBase kids = direct(element.getItem(COSName.K));
        if (!(kids instanceof COSArray array)) {
            pushElement(kids, open);
            return;
        }
        for (int i = array.size() - 1; i >= 0; i--) {
            pushElement(direct(array.get(i)), open);
        }
    }

    private static void pushElement(COSBase kid, Deque<COSDictionary> open) {
        if (isElement(kid)) {
            open.push((COSDictionary) kid);
        }
    }

    /**
     * Whether nothing that it holds belongs to its document.
     *
     * @param pages on which it may lie
     */
    static boolean isFree(COSBase value, Set<COSBase> pages) {
        if (value instanceof COSArray array) {
            for (COSBase each : array) {
                if (!isFree(direct(each), pages)) {
                    return false;
                }
            }
        } else if (value instanceof COSDictionary dictionary) {
            for (COSName key : dictionary.keySet()) {
                COSBase held = direct(dictionary.getItem(key));
                boolean free =
                        key.equals(COSName.PG)
                                ? pages.contains(held)
                                : key.equals(COSName.P) || isFree(held, pages);
                if (!free || OF_A_DOCUMENT.contains(key)) {
                    return false;
                }
            }
        }
        return true;
    }
}
