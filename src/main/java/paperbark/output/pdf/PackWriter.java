package paperbark.output.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;

/**
 * Writes one document: the elements of its tree first, then pages and what lies on them, so that
 * {@link RunWriter} can take all of them over by adding one number.
 */
public final class PackWriter {
    private PackWriter() {}

    /**
     * Writes a document as it is in memory; its structure tree is slimmed first.
     *
     * @param out is left open
     */
    public static void write(PDDocument document, OutputStream out) throws IOException {
        COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
        COSDictionary information = document.getDocumentInformation().getCOSObject();
        List<COSDictionary> pages = flat(document);
        List<COSDictionary> annotations = annotations(pages);
        int parents = numberParents(pages, annotations);
        DocumentWriter file = new DocumentWriter(out);
        GraphWriter writer = new GraphWriter(file);
        List<COSDictionary> elements = elements(document);
        int count = writer.number(elements);
        enterAll(document, elements, parents, writer);
        writer.number(pages);
        writer.number(annotations);
        List<COSDictionary> roots = new ArrayList<>(pages);
        roots.addAll(annotations);
        roots.add(catalog);
        roots.add(information);
        writer.writeAll(roots, elements);
        writer.writeGroup(elements);
        file.finish(
                writer.numberOf(catalog),
                writer.numberOf(information),
                id(document),
                new int[] {count, pages.size(), annotations.size()});
    }

    /** The same as bytes. */
    public static byte[] bytes(PDDocument document) throws IOException {
        Buffer out = new Buffer();
        write(document, out);
        return out.toByteArray();
    }

    /** Sixteen bytes that follow from what the document says of itself. */
    static byte[] id(PDDocument document) {
        try {
            MessageDigest digest = MessageDigest.getInstance("MD5");
            String of = document.getDocumentId() + document.getDocumentInformation().getTitle();
            return digest.digest(of.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The pages, all of them right below the root of the pages. */
    private static List<COSDictionary> flat(PDDocument document) {
        COSDictionary root = document.getPages().getCOSObject();
        List<COSDictionary> pages = new ArrayList<>();
        COSArray kids = new COSArray();
        for (PDPage page : document.getPages()) {
            COSDictionary own = page.getCOSObject();
            if (own.getCOSDictionary(COSName.PARENT) != root) {
                own.setItem(COSName.RESOURCES, page.getResources());
                own.setItem(COSName.MEDIA_BOX, page.getMediaBox());
                own.setItem(COSName.PARENT, root);
            }
            pages.add(own);
            kids.add(own);
        }
        root.setItem(COSName.KIDS, kids);
        root.setInt(COSName.COUNT, pages.size());
        return pages;
    }

    private static List<COSDictionary> annotations(List<COSDictionary> pages) {
        List<COSDictionary> annotations = new ArrayList<>();
        for (COSDictionary page : pages) {
            COSArray own = page.getCOSArray(COSName.ANNOTS);
            for (int i = 0; own != null && i < own.size(); i++) {
                annotations.add((COSDictionary) own.getObject(i));
            }
        }
        return annotations;
    }

    /** Gives pages and annotations their numbers in the tree of parents; returns the next one. */
    private static int numberParents(List<COSDictionary> pages, List<COSDictionary> annotations) {
        int next = 0;
        for (COSDictionary page : pages) {
            if (page.containsKey(COSName.STRUCT_PARENTS)) {
                page.setInt(COSName.STRUCT_PARENTS, next++);
            }
        }
        for (COSDictionary annotation : annotations) {
            if (annotation.containsKey(COSName.STRUCT_PARENT)) {
                annotation.setInt(COSName.STRUCT_PARENT, next++);
            }
        }
        return next;
    }

    private static List<COSDictionary> elements(PDDocument document) {
        PDStructureTreeRoot root = document.getDocumentCatalog().getStructureTreeRoot();
        return root == null ? List.of() : new TagTree(root.getCOSObject()).elements();
    }

    /** Writes the tree of parents into the document. */
    private static void enterAll(
            PDDocument document, List<COSDictionary> elements, int count, GraphWriter writer) {
        PDStructureTreeRoot root = document.getDocumentCatalog().getStructureTreeRoot();
        if (root == null) {
            return;
        }
        Map<Integer, COSBase> entries = new TreeMap<>();
        for (COSDictionary element : elements) {
            if (element instanceof KnownElement known) {
                int first = writer.numberOf(known);
                for (ReadyTags.Content content : known.contents()) {
                    enter(
                            known.page(content.page()),
                            content.number(),
                            new Ref(first + content.element()),
                            entries);
                }
            } else {
                enter(element, entries);
            }
        }
        COSArray pairs = new COSArray();
        entries.forEach(
                (number, entry) -> {
                    pairs.add(COSInteger.get(number));
                    pairs.add(entry);
                });
        COSDictionary parents = new COSDictionary();
        parents.setItem(COSName.NUMS, pairs);
        root.getCOSObject().setItem(COSName.PARENT_TREE, parents);
        root.setParentTreeNextKey(count);
    }

    /** Notes where the content of an element lies: the way back from the pages to the tree. */
    private static void enter(COSDictionary element, Map<Integer, COSBase> entries) {
        for (COSBase kid : TagElement.kids(element)) {
            COSDictionary mark = kid instanceof COSDictionary held ? held : element;
            COSDictionary page = mark.getCOSDictionary(COSName.PG);
            if (kid instanceof COSInteger content) {
                enter(page, content.intValue(), element, entries);
            } else if (mark.containsKey(COSName.MCID)) {
                enter(page, mark.getInt(COSName.MCID), element, entries);
            } else if (mark.containsKey(COSName.OBJ)) {
                COSDictionary object = mark.getCOSDictionary(COSName.OBJ);
                entries.put(object.getInt(COSName.STRUCT_PARENT), element);
            }
        }
    }

    private static void enter(
            COSDictionary page, int content, COSBase element, Map<Integer, COSBase> entries) {
        int number = page.getInt(COSName.STRUCT_PARENTS);
        COSArray all = (COSArray) entries.computeIfAbsent(number, n -> new COSArray());
        all.growToSize(content + 1);
        all.set(content, element);
    }
}
