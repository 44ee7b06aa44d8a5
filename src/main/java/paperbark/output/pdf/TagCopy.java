package paperbark.output.pdf;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;

/** A paper's elements of the structure tree, without a document; pages are told by number. */
final class TagCopy {
    // Contents that the tree holds as objects, such as links, belong to one document alone.
    private static final List<COSName> OF_A_DOCUMENT = List.of(COSName.OBJ, COSName.STRUCT_PARENT);

    private final List<COSDictionary> elements;

    private TagCopy(List<COSDictionary> elements) {
        this.elements = elements;
    }

    /**
     * Copies elements.
     *
     * @param pages on which they lie
     * @return empty where they hold what belongs to their document
     */
    static Optional<TagCopy> of(List<COSDictionary> elements, List<COSDictionary> pages) {
        Map<COSBase, COSBase> numbers = new IdentityHashMap<>();
        for (int i = 0; i < pages.size(); i++) {
            numbers.put(pages.get(i), COSInteger.get(i));
        }
        List<COSDictionary> copies = new ArrayList<>();
        for (COSDictionary element : elements) {
            if (!isFree(element, numbers)) {
                return Optional.empty();
            }
            copies.add(copy(element, COSInteger.ZERO, numbers::get));
        }
        return Optional.of(new TagCopy(copies));
    }

    private static boolean isFree(COSBase value, Map<COSBase, COSBase> pages) {
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
                                ? pages.containsKey(held)
                                : key.equals(COSName.P) || isFree(held, pages);
                if (!free || OF_A_DOCUMENT.contains(key)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** The elements below a parent, new each time. */
    List<COSDictionary> below(COSBase parent, List<COSDictionary> pages) {
        List<COSDictionary> all = new ArrayList<>();
        for (COSDictionary element : elements) {
            all.add(copy(element, parent, number -> pages.get(((COSInteger) number).intValue())));
        }
        return all;
    }

    private static COSDictionary copy(
            COSDictionary element, COSBase parent, UnaryOperator<COSBase> page) {
        COSDictionary copy = new COSDictionary();
        for (COSName key : element.keySet()) {
            COSBase value = direct(element.getItem(key));
            if (key.equals(COSName.P)) {
                copy.setItem(key, parent);
            } else if (key.equals(COSName.PG)) {
                copy.setItem(key, page.apply(value));
            } else {
                copy.setItem(key, value(value, copy, page));
            }
        }
        return copy;
    }

    private static COSBase value(COSBase value, COSDictionary within, UnaryOperator<COSBase> page) {
        if (value instanceof COSDictionary dictionary) {
            return copy(dictionary, within, page);
        }
        if (value instanceof COSArray array) {
            COSArray copy = new COSArray();
            array.forEach(each -> copy.add(value(direct(each), within, page)));
            return copy;
        }
        return value;
    }

    private static COSBase direct(COSBase value) {
        return value instanceof COSObject object ? object.getObject() : value;
    }

    /** The elements as a document would have them, for comparing. */
    @Override
    public String toString() {
        Buffer text = new Buffer();
        Map<COSBase, Integer> numbers = new IdentityHashMap<>();
        List<COSDictionary> all = new ArrayList<>(elements);
        for (int i = 0; i < all.size(); i++) {
            numbers.put(all.get(i), i + 1);
            for (COSBase kid : TagTree.kids(all.get(i))) {
                if (kid instanceof COSDictionary element && element.containsKey(COSName.S)) {
                    all.add(element);
                }
            }
        }
        ObjectText writer = new ObjectText(text, object -> numbers.getOrDefault(object, 0));
        all.forEach(writer::write);
        return text.toString();
    }
}
