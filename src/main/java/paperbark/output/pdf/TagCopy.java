package paperbark.output.pdf;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;

/** Copies a paper's elements of the structure tree, where no document alone can have them. */
final class TagCopy {
    // Contents that the tree holds as objects, such as links, belong to one document alone.
    private static final List<COSName> OF_A_DOCUMENT = List.of(COSName.OBJ, COSName.STRUCT_PARENT);

    private TagCopy() {}

    /**
     * Copies elements.
     *
     * @param parent that holds the copies
     * @param pages on which they lie
     * @return empty where they hold what belongs to their document
     */
    static Optional<List<COSDictionary>> of(
            List<COSDictionary> elements, COSDictionary parent, List<COSDictionary> pages) {
        Set<COSBase> own = Collections.newSetFromMap(new IdentityHashMap<>());
        own.addAll(pages);
        List<COSDictionary> copies = new ArrayList<>();
        for (COSDictionary element : elements) {
            if (!isFree(element, own)) {
                return Optional.empty();
            }
            copies.add(copy(element, parent));
        }
        return Optional.of(copies);
    }

    private static boolean isFree(COSBase value, Set<COSBase> pages) {
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

    private static COSDictionary copy(COSDictionary element, COSBase parent) {
        COSDictionary copy = new COSDictionary();
        for (COSName key : element.keySet()) {
            COSBase value = direct(element.getItem(key));
            if (key.equals(COSName.P)) {
                copy.setItem(key, parent);
            } else {
                copy.setItem(key, key.equals(COSName.PG) ? value : value(value, copy));
            }
        }
        return copy;
    }

    private static COSBase value(COSBase value, COSDictionary within) {
        if (value instanceof COSDictionary dictionary) {
            return copy(dictionary, within);
        }
        if (value instanceof COSArray array) {
            COSArray copy = new COSArray();
            array.forEach(each -> copy.add(value(direct(each), within)));
            return copy;
        }
        return value;
    }

    private static COSBase direct(COSBase value) {
        return value instanceof COSObject object ? object.getObject() : value;
    }
}
