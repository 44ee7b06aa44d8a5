package paperbark.output.paper;

import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;

/**
 * The way back from a place on a page to the structure tree (ISO 32000-1, 14.7.4.4): a list of
 * number and element, the number being the one that page or annotation carries.
 */
final class ParentTree {
    private static final COSName PARENT_TREE = COSName.PARENT_TREE;

    private final PDStructureTreeRoot root;
    private final COSArray pairs;

    private ParentTree(PDStructureTreeRoot root, COSArray pairs) {
        this.root = root;
        this.pairs = pairs;
    }

    /** The tree of a pack, which the layout writes as one flat list. */
    static ParentTree of(PDDocument document) {
        PDStructureTreeRoot root = document.getDocumentCatalog().getStructureTreeRoot();
        COSDictionary tree = root.getCOSObject().getCOSDictionary(PARENT_TREE);
        return new ParentTree(root, tree.getCOSArray(COSName.NUMS));
    }

    /** An empty tree for a new root. */
    static ParentTree startedIn(PDStructureTreeRoot root) {
        COSDictionary tree = new COSDictionary();
        COSArray pairs = new COSArray();
        tree.setItem(COSName.NUMS, pairs);
        root.getCOSObject().setItem(PARENT_TREE, tree);
        root.setParentTreeNextKey(0);
        return new ParentTree(root, pairs);
    }

    /** The number that the next entry gets. */
    int next() {
        return root.getParentTreeNextKey();
    }

    /** Puts the entry of a number in place of an older one. */
    void set(int number, COSBase entry) {
        pairs.set(placeOf(number) + 1, entry);
    }

    /** Takes the entry of a number out. */
    COSDictionary remove(int number) {
        int place = placeOf(number);
        COSDictionary entry = (COSDictionary) pairs.getObject(place + 1);
        pairs.remove(place + 1);
        pairs.remove(place);
        return entry;
    }

    private int placeOf(int number) {
        for (int i = 0; i < pairs.size(); i += 2) {
            if (pairs.getInt(i) == number) {
                return i;
            }
        }
        throw new IllegalArgumentException("no such number in the parent tree: " + number);
    }

    /** Adds an entry, and gives its number back. */
    int add(COSBase entry) {
        int number = next();
        pairs.add(COSInteger.get(number));
        pairs.add(entry);
        root.setParentTreeNextKey(number + 1);
        return number;
    }

    /** Adds the entries of another tree, each under its number and {@link #next} together. */
    void addAll(ParentTree other) {
        int offset = next();
        for (int i = 0; i < other.pairs.size(); i += 2) {
            pairs.add(COSInteger.get(offset + other.pairs.getInt(i)));
            pairs.add(other.pairs.get(i + 1));
        }
        root.setParentTreeNextKey(offset + other.next());
    }
}
