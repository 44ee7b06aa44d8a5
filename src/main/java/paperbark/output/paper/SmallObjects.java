package paperbark.output.paper;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Makes a tagged document small and quick to write: lists and attributes that only one place uses
 * are written there and not as objects of their own, which are most of the objects that the layout
 * makes; table heads and feet without a row are left out.
 */
final class SmallObjects {
    private static final Set<String> GROUPS = Set.of("THead", "TFoot");

    private static final Set<String> OWN_MARKS = Set.of("Layout", "Pagination");

    private SmallObjects() {}

    /** Slims the document's pages and structure tree. */
    static void writeInPlace(PDDocument document) {
        for (PDPage page : document.getPages()) {
            COSDictionary resources = page.getCOSObject().getCOSDictionary(COSName.RESOURCES);
            if (resources != null) {
                inPlace(resources);
                resources.getValues().forEach(SmallObjects::inPlace);
                COSDictionary marks = resources.getCOSDictionary(COSName.PROPERTIES);
                if (marks != null) {
                    marks.getValues().forEach(SmallObjects::mark);
                }
            }
        }
        COSDictionary root = document.getDocumentCatalog().getStructureTreeRoot().getCOSObject();
        COSDictionary parents = root.getCOSDictionary(COSName.PARENT_TREE);
        COSArray pairs = parents.getCOSArray(COSName.NUMS);
        inPlace(pairs);
        pairs.forEach(entry -> arrayInPlace(entry));
        Deque<COSDictionary> elements = new ArrayDeque<>();
        elements.push(root);
        while (!elements.isEmpty()) {
            slim(elements.pop(), elements);
        }
    }

    private static void slim(COSDictionary element, Deque<COSDictionary> elements) {
        inPlace(element.getItem(COSName.A));
        COSBase kids = element.getDictionaryObject(COSName.K);
        if (kids instanceof COSArray several) {
            inPlace(several);
            for (int i = several.size() - 1; i >= 0; i--) {
                if (isEmpty(several.get(i))) {
                    several.remove(i);
                }
            }
            several.forEach(kid -> kid(kid, elements));
        } else {
            kid(kids, elements);
        }
    }

    private static void kid(COSBase kid, Deque<COSDictionary> elements) {
        if (kid instanceof COSDictionary dictionary) {
            if (dictionary.containsKey(COSName.S)) {
                elements.push(dictionary);
            } else {
                inPlace(dictionary);
            }
        }
    }

    private static boolean isEmpty(COSBase kid) {
        return kid instanceof COSDictionary element
                && !element.containsKey(COSName.K)
                && GROUPS.contains(element.getNameAsString(COSName.S, ""));
    }

    private static void arrayInPlace(COSBase value) {
        if (value instanceof COSArray) {
            inPlace(value);
        }
    }

    /**
     * What a mark on the page says. Lines and shades are design and no more (ISO 32000-1,
     * 14.8.2.2.2, layout artifacts), so nobody needs to know where each of thousands lies. Layers
     * of other people's forms are objects that several pages may share.
     */
    private static void mark(COSBase value) {
        if (value instanceof COSDictionary mark && !(value instanceof COSStream)) {
            if (mark.getNameAsString(COSName.TYPE, "").equals("Background")) {
                mark.removeItem(COSName.BBOX);
                mark.setName(COSName.TYPE, "Layout");
            }
            if (OWN_MARKS.contains(mark.getNameAsString(COSName.TYPE, ""))
                    || mark.containsKey(COSName.MCID)) {
                inPlace(mark);
            }
        }
    }

    private static void inPlace(COSBase value) {
        boolean list = value instanceof COSArray || value instanceof COSDictionary;
        if (list && !(value instanceof COSStream) && !(value instanceof COSObject)) {
            value.setDirect(true);
        }
    }
}
