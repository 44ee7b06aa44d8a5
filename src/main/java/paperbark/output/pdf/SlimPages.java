package paperbark.output.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;

/**
 * The pages of a document that the layout drew, made small: their content as short as it can be
 * said, one font a style for all of them, and a structure tree without elements that say nothing.
 */
public final class SlimPages {
    private static final byte[] NOTHING = {};
    private static final int[] NONE = {};

    private final PDDocument document;
    // Each page with the content that the layout gave it.
    private final Map<COSDictionary, COSBase> drawn = new LinkedHashMap<>();
    private final Map<COSDictionary, byte[]> behind = new IdentityHashMap<>();

    /**
     * The pages that a document has now; those whose content is exchanged later are left alone.
     *
     * @param document as the layout left it
     */
    public SlimPages(PDDocument document) {
        this.document = document;
        for (PDPage page : document.getPages()) {
            COSBase content = page.getCOSObject().getDictionaryObject(COSName.CONTENTS);
            if (content != null) {
                drawn.put(page.getCOSObject(), content);
            }
        }
    }

    /** Whether the page still shows what the layout drew. */
    private boolean has(PDPage page) {
        COSDictionary own = page.getCOSObject();
        return drawn.containsKey(own)
                && drawn.get(own) == own.getDictionaryObject(COSName.CONTENTS);
    }

    /**
     * Draws onto a page, whatever it shows.
     *
     * @param content steps that leave the state of the page as they found it
     */
    public void add(PDPage page, byte[] content) throws IOException {
        if (has(page)) {
            behind.put(page.getCOSObject(), content.clone());
        } else {
            Streams.drawOver(page.getCOSObject(), content);
        }
    }

    /**
     * Makes the pages small.
     *
     * @param styles which style of the typeface a font is, from 0
     * @param papers what the pages hold, in order
     * @param running what is known of head and foot of each page
     * @return what was wanted of papers and pages
     */
    public Slimmed slim(
            Function<COSDictionary, Optional<Integer>> styles,
            List<PaperPart> papers,
            List<PageHead> running)
            throws IOException {
        TagTree tree =
                new TagTree(document.getDocumentCatalog().getStructureTreeRoot().getCOSObject());
        List<COSDictionary> pages = new ArrayList<>();
        document.getPages().forEach(page -> pages.add(page.getCOSObject()));
        if (papers.stream().anyMatch(p -> p.known().isPresent())) {
            tree.place(papers, pages);
        }
        Glyphs used = new Glyphs();
        AlikeFonts alike = new AlikeFonts(used);
        // Whoever fills fields in needs letters that nothing shows yet.
        boolean fillable = document.getDocumentCatalog().getAcroForm(null) != null;
        Map<COSDictionary, List<Op>> steps = new LinkedHashMap<>();
        List<Optional<PageFrame>> frames = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            PageHead head = running.get(frames.size());
            Optional<PageFrame> frame = Optional.empty();
            if (has(page)) {
                List<Op> own =
                        head.known().isPresent()
                                ? head.known().get().with(head.values(), used)
                                : read(page.getCOSObject(), styles, used);
                steps.put(page.getCOSObject(), own);
                if (head.drawn().isPresent()) {
                    frame = PageFrame.of(own, head.drawn().get(), head, page.getCOSObject());
                }
            } else if (!fillable) {
                alike.find(page.getCOSObject());
            }
            frames.add(frame);
        }
        showPictures(pages, running, steps.keySet());
        Map<COSDictionary, Sketch.Contents> contents = new IdentityHashMap<>();
        steps.keySet().forEach(p -> contents.put(p, new Sketch.Contents(tree.next(p), NONE)));
        papers.forEach(paper -> show(paper, paper.of(pages), steps, contents, used));
        COSDictionary fonts = new COSDictionary();
        COSDictionary shared = new COSDictionary();
        shared.setItem(COSName.FONT, fonts);
        Map<COSDictionary, int[]> numbers = new IdentityHashMap<>();
        RunningHeads heads = new RunningHeads(steps.values());
        for (Map.Entry<COSDictionary, List<Op>> page : steps.entrySet()) {
            COSDictionary own = page.getKey();
            numbers.put(own, slim(own, page.getValue(), heads, contents.get(own)));
            own.setItem(COSName.RESOURCES, resources(own, shared));
            DeadLinks.drop(own);
        }
        tree.renumber(numbers);
        numbers.forEach((p, n) -> contents.put(p, new Sketch.Contents(tree.next(p), n)));
        List<Optional<Sketch>> sketches =
                papers.stream().map(p -> sketch(p, p.of(pages), steps, contents)).toList();
        untieBookmarks();
        fonts.addAll(Faces.shared().fonts(used));
        alike.share(fonts);
        document.getPages().getCOSObject().setItem(COSName.RESOURCES, shared);
        return new Slimmed(sketches, frames);
    }

    /**
     * What came of it.
     *
     * @param sketches of each paper, if one was wanted and can be taken
     * @param frames of each page, likewise
     */
    public record Slimmed(List<Optional<Sketch>> sketches, List<Optional<PageFrame>> frames) {}

    /** A bookmark tells its place on a page; the layout ties it to an element that says nothing. */
    private void untieBookmarks() {
        PDDocumentOutline outline = document.getDocumentCatalog().getDocumentOutline();
        if (outline != null) {
            outline.children().forEach(item -> item.getCOSObject().removeItem(COSName.SE));
        }
    }

    private static void showPictures(
            List<COSDictionary> pages, List<PageHead> running, Set<COSDictionary> drawn)
            throws IOException {
        Pictures pictures = new Pictures(drawn);
        for (int i = 0; i < pages.size(); i++) {
            Optional<PageFrame> known = running.get(i).known();
            if (known.isPresent()
                    && !known.get().pictures().isEmpty()
                    && drawn.contains(pages.get(i))) {
                pictures.show(known.get().pictures(), pages.get(i));
            }
        }
    }

    private static void show(
            PaperPart paper,
            List<COSDictionary> pages,
            Map<COSDictionary, List<Op>> steps,
            Map<COSDictionary, Sketch.Contents> contents,
            Glyphs used) {
        if (paper.known().isPresent()) {
            Sketch known = paper.known().get();
            known.addTo(used);
            for (int i = 0; i < pages.size(); i++) {
                steps.compute(pages.get(i), page(known.page(i).steps()));
                contents.put(pages.get(i), known.page(i).contents());
            }
        }
    }

    private static BiFunction<COSDictionary, List<Op>, List<Op>> page(List<Op> paper) {
        return (page, running) -> SketchReader.between(running, paper);
    }

    private static Optional<Sketch> sketch(
            PaperPart paper,
            List<COSDictionary> pages,
            Map<COSDictionary, List<Op>> steps,
            Map<COSDictionary, Sketch.Contents> contents) {
        boolean isDrawn = steps.keySet().containsAll(pages);
        return paper.strings().isEmpty() || !isDrawn
                ? Optional.empty()
                : SketchReader.of(
                        paper,
                        pages.stream().map(steps::get).toList(),
                        pages,
                        pages.stream().map(contents::get).toList());
    }

    private List<Op> read(
            COSDictionary page, Function<COSDictionary, Optional<Integer>> styles, Glyphs used)
            throws IOException {
        COSDictionary resources = dictionary(page, COSName.RESOURCES);
        Map<COSName, Integer> faces = new HashMap<>();
        COSDictionary fonts = dictionary(resources, COSName.FONT);
        for (COSName name : fonts.keySet()) {
            faces.put(name, styles.apply(fonts.getCOSDictionary(name)).orElseThrow());
        }
        COSDictionary marks = dictionary(resources, COSName.PROPERTIES);
        return new PageOps(content(page), faces, marks, used).read();
    }

    private int[] slim(
            COSDictionary page, List<Op> steps, RunningHeads heads, Sketch.Contents contents)
            throws IOException {
        Optional<COSStream> head = heads.of(steps);
        List<Op> own = head.isEmpty() ? steps : heads.rest(steps);
        PageText text = new PageText(own, contents::follows, contents(own));
        byte[] body = text.write();
        Buffer all = new Buffer();
        byte[] last = behind.getOrDefault(page, NOTHING);
        all.write(body, 0, body.length);
        all.write(last, 0, last.length);
        COSStream content = Streams.of(all.toByteArray());
        page.setItem(
                COSName.CONTENTS,
                head.isEmpty() ? content : new COSArray(List.of(head.get(), content)));
        int[] numbers = text.numbers();
        if (contents.numbers().length > 0 && !Arrays.equals(contents.numbers(), numbers)) {
            throw new UnknownPlace();
        }
        return numbers;
    }

    private static COSDictionary dictionary(COSDictionary of, COSName name) {
        COSDictionary found = of.getCOSDictionary(name);
        return found == null ? new COSDictionary() : found;
    }

    private static int contents(List<Op> ops) {
        return 1
                + ops.stream()
                        .mapToInt(op -> op instanceof Op.Begin b ? b.mark().content() : -1)
                        .max()
                        .orElse(-1);
    }

    /** What a page draws with: marks are said where they stand, and the fonts are everybody's. */
    private static COSDictionary resources(COSDictionary page, COSDictionary shared) {
        COSDictionary resources = dictionary(page, COSName.RESOURCES);
        resources.removeItem(COSName.PROPERTIES);
        resources.removeItem(COSName.FONT);
        if (resources.size() == 0) {
            return shared;
        }
        // No picture of an archive may be smoothed (ISO 19005-2, 6.2.8).
        COSDictionary pictures = dictionary(resources, COSName.XOBJECT);
        for (COSName name : pictures.keySet()) {
            pictures.getCOSDictionary(name).removeItem(COSName.INTERPOLATE);
        }
        resources.setItem(COSName.FONT, shared.getItem(COSName.FONT));
        return resources;
    }

    private static byte[] content(COSDictionary page) throws IOException {
        COSBase content = page.getDictionaryObject(COSName.CONTENTS);
        Buffer all = new Buffer();
        if (content instanceof COSArray parts) {
            for (int i = 0; i < parts.size(); i++) {
                copy((COSStream) parts.getObject(i), all);
            }
        } else {
            copy((COSStream) content, all);
        }
        return all.toByteArray();
    }

    private static void copy(COSStream part, Buffer all) throws IOException {
        try (InputStream in = part.createInputStream()) {
            all.all(in, part.getLength());
        }
        all.write('\n');
    }
}
