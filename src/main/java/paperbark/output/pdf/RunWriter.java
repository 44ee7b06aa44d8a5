package paperbark.output.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;

/**
 * Joins packs to one document. Their objects are copied as they are, with the numbers moved on, so
 * that links and tags still find their pages; fonts, pictures and contents that several packs share
 * are written once. One pack is in memory at a time, and what {@link Taken} keeps of the others.
 */
public final class RunWriter {
    private final DocumentWriter file;
    private final int pagesNumber;
    private final int fontsNumber;
    private final int resourcesNumber;
    private final int rootNumber;
    private final int allNumber;
    private final int fontNumbers;
    private final Taken taken = new Taken();
    private final Glyphs used = new Glyphs();
    private final NotedPage noted;
    private final List<Integer> pages = new ArrayList<>();
    private final COSArray parts = new COSArray();
    private final COSArray parents = new COSArray();
    private Optional<COSDictionary> roles = Optional.empty();
    private int nextParent;

    /** Begins a run. The stream is left open. */
    public RunWriter(OutputStream out) throws IOException {
        file = new DocumentWriter(out);
        pagesNumber = file.reserve(5);
        fontNumbers = file.reserve(2 * Faces.STYLES);
        fontsNumber = pagesNumber + 1;
        rootNumber = pagesNumber + 2;
        allNumber = pagesNumber + 3;
        resourcesNumber = pagesNumber + 4;
        noted = new NotedPage(file, used, resourcesNumber, fontNumbers);
    }

    /**
     * Adds a pack.
     *
     * @param title of its part of the structure tree
     * @param first what is drawn onto its first page
     */
    public PackFacts add(PackReader pack, String title, PageNote first) throws IOException {
        COSDictionary catalog = pack.catalog();
        Optional<PackReader.Piece> theirRoot =
                pack.held(pack.text(pack.root(COSName.ROOT)), "StructTreeRoot");
        Moved moved = new Moved(pack, file, taken);
        moved.replace(((Ref) catalog.getItem(COSName.PAGES)).number(), pagesNumber);
        if (catalog.getItem(COSName.STRUCT_TREE_ROOT) instanceof Ref root) {
            moved.replace(root.number(), rootNumber);
        }
        fonts(pack, pack.dictionary(catalog, COSName.PAGES), moved);
        if (theirRoot.isPresent()) {
            elements(pack, theirRoot.get(), title, moved);
        }
        int firstPage = pages.size();
        pages(pack, moved, first);
        if (theirRoot.isPresent()) {
            parents(pack, theirRoot.get(), moved);
        }
        file.endGroup();
        return PackFacts.of(pack, firstPage);
    }

    private void fonts(PackReader pack, COSDictionary theirPages, Moved moved) throws IOException {
        COSDictionary resources = pack.dictionary(theirPages, COSName.RESOURCES);
        if (theirPages.getItem(COSName.RESOURCES) instanceof Ref shared) {
            moved.replace(shared.number(), resourcesNumber);
        }
        if (resources.getItem(COSName.FONT) instanceof Ref fonts) {
            moved.replace(fonts.number(), fontsNumber);
        }
        COSDictionary fonts = pack.dictionary(resources, COSName.FONT);
        for (int style = 0; style < Faces.STYLES; style++) {
            COSBase font = pack.object(fonts.getItem(COSName.getPDFName(Faces.nameOf(style))));
            if (font instanceof COSDictionary type0) {
                COSArray below = (COSArray) pack.object(type0.getItem(COSName.DESCENDANT_FONTS));
                COSDictionary descendant = (COSDictionary) pack.object(below.get(0));
                if (below.get(0) instanceof Ref ref) {
                    moved.replace(ref.number(), outlines(style));
                }
                used.add(style, Face.glyphs((COSArray) pack.object(descendant.getItem(COSName.W))));
            }
        }
    }

    /** The number of the outlines of a style. */
    private int outlines(int style) {
        return fontNumbers + Faces.STYLES + style;
    }

    private void elements(PackReader pack, PackReader.Piece theirRoot, String title, Moved moved)
            throws IOException {
        if (roles.isEmpty()) {
            roles =
                    pack.held(theirRoot, "RoleMap")
                            .map(map -> (COSDictionary) PackReader.object(map));
        }
        COSDictionary tree = new COSDictionary();
        Skim.value(theirRoot, "K").ifPresent(k -> tree.setItem(COSName.K, PackReader.object(k)));
        Set<Integer> tops = new HashSet<>();
        for (COSBase kid : TagElement.kids(tree)) {
            int top = ((Ref) kid).number();
            tops.add(top);
            COSDictionary part = (COSDictionary) pack.object(top);
            part.removeItem(COSName.P);
            moved.moved(part);
            part.setItem(COSName.P, new Ref(allNumber));
            part.setName(COSName.S, "Part");
            part.setString(COSName.T, title);
            moved.put(top, part, new Buffer());
            parts.add(new Ref(moved.of(top)));
        }
        Buffer text = new Buffer();
        int count = pack.parts()[0];
        for (int element = 1; element <= count; element++) {
            if (!tops.contains(element)) {
                moved.element(element, text);
            }
        }
        file.endGroup();
    }

    private void pages(PackReader pack, Moved moved, PageNote note) throws IOException {
        int before = pack.parts()[0];
        int count = pack.parts()[1];
        Buffer text = new Buffer();
        for (int i = 1; i <= count; i++) {
            if (i == 1) {
                noted.write(moved, before + i, nextParent, note);
            } else {
                moved.place(before + i, "StructParents", nextParent, text);
            }
            pages.add(moved.of(before + i));
        }
        for (int i = 1; i <= pack.parts()[2]; i++) {
            moved.place(before + count + i, "StructParent", nextParent, text);
        }
    }

    /** Takes over the pairs of numbers in the tree of parents and what stands for them. */
    private void parents(PackReader pack, PackReader.Piece theirRoot, Moved moved)
            throws IOException {
        Optional<PackReader.Piece> tree = pack.held(theirRoot, "ParentTree");
        Optional<PackReader.Piece> pairs = tree.flatMap(found -> Skim.value(found, "Nums"));
        if (pairs.isEmpty() || pairs.get().length() == "[]".length()) {
            return;
        }
        Buffer moving = new Buffer();
        int first = nextParent + Skim.number(pairs.get().behind(pairs.get().from() + 1));
        int last = moved.parents(pairs.get(), nextParent, moving);
        Buffer leaf = new Buffer();
        leaf.text("<</Limits[").number(first).text(" ").number(last).text("]/Nums").all(moving);
        int number = file.reserve(1);
        file.object(number, leaf.text(">>"));
        parents.add(new Ref(number));
        nextParent = last + 1;
    }

    /** Adds a blank page. */
    public void blank() {
        COSDictionary page = new COSDictionary();
        page.setItem(COSName.TYPE, COSName.PAGE);
        page.setItem(COSName.PARENT, new Ref(pagesNumber));
        page.setItem(COSName.MEDIA_BOX, PDRectangle.A4);
        page.setItem(COSName.RESOURCES, new COSDictionary());
        int number = file.reserve(1);
        Buffer text = new Buffer();
        new ObjectText(text, object -> 0).write(page);
        file.object(number, text);
        pages.add(number);
    }

    /** How many pages there are so far. */
    public int pageCount() {
        return pages.size();
    }

    /** Leads to a page of the run, from 0. */
    public PDPageFitDestination to(int page) {
        PDPageFitDestination there = new PDPageFitDestination();
        there.getCOSObject().set(0, new Ref(pages.get(page)));
        return there;
    }

    /**
     * Ends the run.
     *
     * @param shell what the run says of itself, with bookmarks and without pages
     */
    public void finish(PDDocument shell) throws IOException {
        COSDictionary catalog = shell.getDocumentCatalog().getCOSObject();
        COSDictionary information = shell.getDocumentInformation().getCOSObject();
        COSDictionary tree = new COSDictionary();
        COSArray kids = new COSArray();
        pages.forEach(page -> kids.add(new Ref(page)));
        tree.setItem(COSName.TYPE, COSName.PAGES);
        tree.setItem(COSName.KIDS, kids);
        tree.setInt(COSName.COUNT, pages.size());
        COSDictionary resources = new COSDictionary();
        resources.setItem(COSName.FONT, new Ref(fontsNumber));
        tree.setItem(COSName.RESOURCES, new Ref(resourcesNumber));
        catalog.setItem(COSName.PAGES, new Ref(pagesNumber));
        catalog.setItem(COSName.STRUCT_TREE_ROOT, new Ref(rootNumber));
        GraphWriter writer = new GraphWriter(file);
        COSDictionary fonts = Faces.shared().fonts(used);
        COSDictionary root = root();
        COSDictionary all = new COSDictionary();
        all.setName(COSName.S, "Document");
        all.setItem(COSName.P, new Ref(rootNumber));
        all.setItem(COSName.K, parts);
        writer.number(tree, pagesNumber);
        writer.number(fonts, fontsNumber);
        writer.number(resources, resourcesNumber);
        for (int style = 0; style < Faces.STYLES; style++) {
            COSDictionary font = fonts.getCOSDictionary(COSName.getPDFName(Faces.nameOf(style)));
            if (font != null) {
                writer.number(font, fontNumbers + style);
                COSArray below = font.getCOSArray(COSName.DESCENDANT_FONTS);
                writer.number((COSDictionary) below.getObject(0), outlines(style));
            }
        }
        writer.number(root, rootNumber);
        writer.number(all, allNumber);
        writer.writeAll(
                List.of(catalog, information, tree, fonts, resources, root, all), List.of());
        file.finish(
                writer.numberOf(catalog),
                writer.numberOf(information),
                PackWriter.id(shell),
                new int[0]);
    }

    private COSDictionary root() {
        COSDictionary root = new COSDictionary();
        root.setItem(COSName.TYPE, COSName.STRUCT_TREE_ROOT);
        root.setItem(COSName.K, new Ref(allNumber));
        COSDictionary tree = new COSDictionary();
        tree.setItem(COSName.KIDS, parents);
        root.setItem(COSName.PARENT_TREE, tree);
        root.setInt(COSName.PARENT_TREE_NEXT_KEY, nextParent);
        roles.ifPresent(map -> root.setItem(COSName.ROLE_MAP, map));
        return root;
    }
}
