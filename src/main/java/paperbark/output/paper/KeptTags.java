package paperbark.output.paper;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;

/**
 * Takes out of a structure tree (ISO 32000-1, 14.7) the papers whose pages are gone. A paper is a
 * section right below the document; within one everything stays as it is, empty cells of tables
 * too.
 */
final class KeptTags {
    private final Set<COSDictionary> pages;
    private final Set<COSDictionary> elements = Collections.newSetFromMap(new IdentityHashMap<>());

    /** For these pages. */
    KeptTags(Set<COSDictionary> pages) {
        this.pages = pages;
    }

    /** Prunes the tree below a root; a document without tags has none. */
    void prune(COSDictionary root) {
        if (root == null) {
            return;
        }
        for (COSBase document : kids(root)) {
            if (document instanceof COSDictionary whole) {
                COSArray sections = new COSArray();
                for (COSBase section : kids(whole)) {
                    if (shows(section)) {
                        sections.add(section);
                    }
                }
                whole.setItem(COSName.K, sections);
            }
        }
        gather(root);
        pairs(root.getCOSDictionary(COSName.PARENT_TREE), COSName.NUMS);
        pairs(root.getCOSDictionary(COSName.ID_TREE), COSName.NAMES);
    }

    private static List<COSBase> kids(COSDictionary element) {
        COSBase kids = element.getDictionaryObject(COSName.K);
        if (kids instanceof COSArray array) {
            return array.toList().stream().map(KeptTags::direct).toList();
        }
        return kids == null ? List.of() : List.of(kids);
    }

    private static COSBase direct(COSBase value) {
        return value instanceof COSObject reference ? reference.getObject() : value;
    }

    /** Whether something below is on a page that stays. */
    private boolean shows(COSBase tag) {
        if (!(tag instanceof COSDictionary element)) {
            return false;
        }
        COSDictionary page = element.getCOSDictionary(COSName.PG);
        return page != null && pages.contains(page) || kids(element).stream().anyMatch(this::shows);
    }

    private void gather(COSDictionary element) {
        elements.add(element);
        for (COSBase kid : kids(element)) {
            if (kid instanceof COSDictionary below) {
                gather(below);
            }
        }
    }

    /** Leaves in a tree of pairs those that lead to elements that are left. */
    private void pairs(COSDictionary tree, COSName name) {
        if (tree == null) {
            return;
        }
        COSArray below = tree.getCOSArray(COSName.KIDS);
        for (int i = 0; below != null && i < below.size(); i++) {
            if (below.getObject(i) instanceof COSDictionary branch) {
                pairs(branch, name);
            }
        }
        COSArray pairs = tree.getCOSArray(name);
        if (pairs == null) {
            return;
        }
        COSArray left = new COSArray();
        for (int i = 0; i + 1 < pairs.size(); i += 2) {
            if (leads(pairs.getObject(i + 1))) {
                left.add(pairs.get(i));
                left.add(pairs.get(i + 1));
            }
        }
        tree.setItem(name, left);
    }

    private boolean leads(COSBase value) {
        return value instanceof COSArray list
                ? list.toList().stream().map(KeptTags::direct).anyMatch(elements::contains)
                : elements.contains(value);
    }
}
