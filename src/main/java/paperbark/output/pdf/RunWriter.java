package paperbark.output.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;

/**
 * Joins packs to one document. Their objects are copied as they are, with the numbers moved on, so
 * that links and tags still find their pages; fonts, pictures and contents that several packs share
 * are written once. One pack is in memory at a time.
 */
public final class RunWriter {
    private static final String OF_NOTES = "Run";

    private final DocumentWriter file;
    private final int pagesNumber;
    private final int fontsNumber;
    private final int resourcesNumber;
    private final int rootNumber;
    private final int allNumber;
    private final int fontNumbers;
    private final Map<ByteBuffer, Integer> written = new HashMap<>();
    private final Glyphs used = new Glyphs();
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
    }

    /**
     * A pack in the run.
     *
     * @param firstPage its first page in the run, from 0
     * @param pageCount how many it has
     * @param marks its bookmarks, with the page in the run
     * @param title what it calls itself
     * @param author whose it is
     * @param metadata what it says of itself in XML
     */
    public record Added(
            int firstPage,
            int pageCount,
            List<Bookmark> marks,
            String title,
            String author,
            String metadata) {}

    /** A bookmark: its words and its page, from 0. */
    public record Bookmark(String title, int page) {}

    /** Whether a document can be added as it is: this program wrote it, and nothing in it acts. */
    public static boolean takes(byte[] pdf) {
        try {
            PackReader pack = PackReader.of(pdf);
            COSBase catalog = pack.object(pack.root(COSName.ROOT));
            return !((COSDictionary) catalog).containsKey(COSName.ACRO_FORM);
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * Adds a pack.
     *
     * @param pdf as {@link PackWriter} wrote it, without live fields
     * @param title of its part of the structure tree
     * @param first what is drawn onto its first page
     * @throws IOException when another program wrote it
     */
    public Added add(byte[] pdf, String title, PageNote first) throws IOException {
        PackReader pack = PackReader.of(pdf);
        COSDictionary catalog = (COSDictionary) pack.object(pack.root(COSName.ROOT));
        COSDictionary theirPages = pack.dictionary(catalog, COSName.PAGES);
        COSDictionary theirRoot = pack.dictionary(catalog, COSName.STRUCT_TREE_ROOT);
        Moved moved = new Moved(pack, file, written);
        moved.replace(((Ref) catalog.getItem(COSName.PAGES)).number(), pagesNumber);
        if (catalog.getItem(COSName.STRUCT_TREE_ROOT) instanceof Ref root) {
            moved.replace(root.number(), rootNumber);
        }
        fonts(pack, theirPages, moved);
        elements(pack, theirRoot, title, moved);
        int firstPage = pages.size();
        pages(pack, moved, first);
        parents(pack, theirRoot, moved);
        file.endGroup();
        COSDictionary says = (COSDictionary) pack.object(pack.root(COSName.INFO));
        return new Added(
                firstPage,
                pack.parts()[1],
                marks(pack, catalog, firstPage),
                says.getString(COSName.TITLE, ""),
                says.getString(COSName.AUTHOR, ""),
                metadata(pack, catalog));
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

    private void elements(PackReader pack, COSDictionary theirRoot, String title, Moved moved)
            throws IOException {
        if (roles.isEmpty() && theirRoot.containsKey(COSName.ROLE_MAP)) {
            roles = Optional.of(pack.dictionary(theirRoot, COSName.ROLE_MAP));
        }
        Set<Integer> tops = new HashSet<>();
        for (COSBase kid : TagElement.kids(theirRoot)) {
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
                moved.take(element, text);
            }
        }
        file.endGroup();
    }

    private void pages(PackReader pack, Moved moved, PageNote note) throws IOException {
        int before = pack.parts()[0];
        int count = pack.parts()[1];
        Buffer text = new Buffer();
        for (int i = 1; i <= count; i++) {
            COSDictionary page = moved.dictionary(before + i);
            move(page, COSName.STRUCT_PARENTS);
            if (i == 1) {
                boolean own =
                        page.getItem(COSName.RESOURCES) instanceof Ref ref
                                && ref.number() == resourcesNumber;
                draw(note, page, own);
                if (!own) {
                    page.setItem(COSName.RESOURCES, withFonts(pack, before + i, moved));
                }
            }
            moved.put(before + i, page, text);
            pages.add(moved.of(before + i));
        }
        for (int i = 1; i <= pack.parts()[2]; i++) {
            COSDictionary annotation = moved.dictionary(before + count + i);
            move(annotation, COSName.STRUCT_PARENT);
            moved.put(before + count + i, annotation, text);
        }
    }

    private void move(COSDictionary place, COSName name) {
        if (place.containsKey(name)) {
            place.setInt(name, place.getInt(name) + nextParent);
        }
    }

    /** Behind what the page shows; our own pages leave their state fit for it, others may not. */
    private void draw(PageNote note, COSDictionary page, boolean own) throws IOException {
        byte[] content = note.content(used, own ? "" : OF_NOTES);
        COSArray all = new COSArray();
        COSBase shown = page.getItem(COSName.CONTENTS);
        if (!own) {
            all.add(stream(Streams.SAVE));
        }
        if (shown instanceof COSArray several) {
            all.addAll(several);
        } else if (shown != null) {
            all.add(shown);
        }
        if (!own) {
            all.add(stream(Streams.RESTORE));
        }
        all.add(stream(content));
        page.setItem(COSName.CONTENTS, all);
    }

    private Ref stream(byte[] content) throws IOException {
        int number = file.reserve(1);
        byte[] body = Deflated.of(content);
        String dictionary = "<</Filter/FlateDecode/Length " + body.length + ">>";
        file.stream(number, dictionary.getBytes(StandardCharsets.US_ASCII), body);
        return new Ref(number);
    }

    /** What a page draws with, and the fonts of notes. */
    private COSDictionary withFonts(PackReader pack, int page, Moved moved) throws IOException {
        COSDictionary own = (COSDictionary) pack.object(page);
        COSDictionary resources = pack.dictionary(own, COSName.RESOURCES);
        COSDictionary fonts = pack.dictionary(resources, COSName.FONT);
        moved.moved(fonts);
        for (int style = 0; style < Faces.STYLES; style++) {
            String name = OF_NOTES + Faces.nameOf(style);
            fonts.setItem(COSName.getPDFName(name), new Ref(fontNumbers + style));
        }
        resources.removeItem(COSName.FONT);
        moved.moved(resources);
        resources.setItem(COSName.FONT, fonts);
        return resources;
    }

    private void parents(PackReader pack, COSDictionary theirRoot, Moved moved) throws IOException {
        COSDictionary tree = pack.dictionary(theirRoot, COSName.PARENT_TREE);
        COSArray pairs = tree.getCOSArray(COSName.NUMS);
        if (pairs == null || pairs.size() == 0) {
            return;
        }
        int last = 0;
        for (int i = 0; i < pairs.size(); i += 2) {
            last = nextParent + pairs.getInt(i);
            pairs.set(i, COSInteger.get(last));
            pairs.set(i + 1, moved.moved(pairs.get(i + 1)));
        }
        COSArray limits = new COSArray();
        limits.add(pairs.get(0));
        limits.add(COSInteger.get(last));
        COSDictionary leaf = new COSDictionary();
        leaf.setItem(COSName.LIMITS, limits);
        leaf.setItem(COSName.NUMS, pairs);
        int number = file.reserve(1);
        Buffer text = new Buffer();
        new ObjectText(text, object -> 0).write(leaf);
        file.object(number, text);
        parents.add(new Ref(number));
        nextParent = last + 1;
    }

    private static List<Bookmark> marks(PackReader pack, COSDictionary catalog, int firstPage)
            throws IOException {
        List<Bookmark> marks = new ArrayList<>();
        COSDictionary mark =
                pack.dictionary(pack.dictionary(catalog, COSName.OUTLINES), COSName.FIRST);
        while (mark.containsKey(COSName.TITLE)) {
            COSBase there = pack.object(mark.getItem(COSName.DEST));
            if (there == null) {
                there = pack.object(pack.dictionary(mark, COSName.A).getItem(COSName.D));
            }
            int page = ((Ref) ((COSArray) there).get(0)).number() - pack.parts()[0] - 1;
            marks.add(new Bookmark(mark.getString(COSName.TITLE), firstPage + page));
            mark = pack.dictionary(mark, COSName.NEXT);
        }
        return marks;
    }

    private static String metadata(PackReader pack, COSDictionary catalog) throws IOException {
        return catalog.getItem(COSName.METADATA) instanceof Ref metadata
                ? new String(pack.body(metadata.number()), StandardCharsets.UTF_8)
                : "";
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
