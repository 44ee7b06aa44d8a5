package paperbark.output.pdf;

import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/**
 * An element of a paper that was not drawn, with all below it: in the tree it stands for them, and
 * they are written from their text.
 */
final class KnownElement extends COSDictionary {
    private final ReadyTags.Branch branch;
    private final List<COSDictionary> pages;

    KnownElement(ReadyTags.Branch branch, COSDictionary parent, List<COSDictionary> pages) {
        this.branch = branch;
        this.pages = pages;
        setItem(COSName.P, parent);
        setItem(COSName.S, branch.kind());
        if (branch.page() >= 0) {
            setItem(COSName.PG, pages.get(branch.page()));
        }
    }

    /** How many elements it stands for. */
    int count() {
        return branch.elements().size();
    }

    /** The texts of the elements. */
    List<ReadyTags.Text> elements() {
        return branch.elements();
    }

    /** What they hold. */
    List<ReadyTags.Content> contents() {
        return branch.contents();
    }

    /** One of the pages of their paper, from 0. */
    COSDictionary page(int number) {
        return pages.get(number);
    }
}
