package paperbark.output.paper;

import java.io.IOException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;

/**
 * The structure tree of a print run: one document with a part for each pack. The trees of the packs
 * are taken over as they are; only the numbers by which pages and links find their way into the
 * tree move on, so that no two packs share one.
 */
final class RunTree {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PDStructureElement all = new PDStructureElement("Document", root);
    private final ParentTree parents = ParentTree.startedIn(root);

    /** The tree of a document that has no pack yet. */
    RunTree(PDDocument run) {
        root.appendKid(all);
        run.getDocumentCatalog().setStructureTreeRoot(root);
    }

    /**
     * Takes a pack's tree over.
     *
     * @param pack stays open until the run is saved, and is not to be used otherwise
     * @param title of the part
     */
    void add(PDDocument pack, String title) throws IOException {
        PDStructureTreeRoot theirs = pack.getDocumentCatalog().getStructureTreeRoot();
        // The layout writes the same one into each pack.
        root.getCOSObject()
                .setItem(COSName.ROLE_MAP, theirs.getCOSObject().getItem(COSName.ROLE_MAP));
        int offset = parents.next();
        for (PDPage page : pack.getPages()) {
            move(page.getCOSObject(), COSName.STRUCT_PARENTS, offset);
            for (PDAnnotation annotation : page.getAnnotations()) {
                move(annotation.getCOSObject(), COSName.STRUCT_PARENT, offset);
            }
        }
        parents.addAll(ParentTree.of(pack));
        for (Object kid : theirs.getKids()) {
            PDStructureElement part = (PDStructureElement) kid;
            part.setStructureType("Part");
            part.setTitle(title);
            part.setParent(all);
            all.appendKid(part);
        }
    }

    private static void move(COSDictionary place, COSName number, int offset) {
        if (place.containsKey(number)) {
            place.setInt(number, place.getInt(number) + offset);
        }
    }
}
