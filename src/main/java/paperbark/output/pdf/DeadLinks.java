package paperbark.output.pdf;

import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/**
 * Links without any width: the layout makes a second one behind the words of a link, on which
 * nobody can press and of which a reader for the blind would still speak.
 */
final class DeadLinks {
    private DeadLinks() {}

    /** Whether what an element of the structure tree holds is such a link. */
    static boolean isOne(COSBase held) {
        return held instanceof COSDictionary reference
                && isNowhere(reference.getCOSDictionary(COSName.OBJ));
    }

    /** Takes such links off a page; the tree does not hold them any more. */
    static void drop(COSDictionary page) {
        COSArray annotations = page.getCOSArray(COSName.ANNOTS);
        for (int i = annotations == null ? -1 : annotations.size() - 1; i >= 0; i--) {
            if (isNowhere((COSDictionary) annotations.getObject(i))) {
                annotations.remove(i);
            }
        }
    }

    private static boolean isNowhere(COSDictionary annotation) {
        if (annotation == null || !COSName.LINK.equals(annotation.getCOSName(COSName.SUBTYPE))) {
            return false;
        }
        COSArray area = annotation.getCOSArray(COSName.RECT);
        return area.get(0).equals(area.get(2));
    }
}
