package paperbark.output.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * The pages of a document that the layout drew, made small: their content as short as it can be
 * said, one font a style for all of them, and a structure tree without elements that say nothing.
 */
public final class SlimPages {
    private static final byte[] NOTHING = {};

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
     */
    public void slim(Function<COSDictionary, Optional<Integer>> styles) throws IOException {
        TagTree tree =
                new TagTree(document.getDocumentCatalog().getStructureTreeRoot().getCOSObject());
        Glyphs used = new Glyphs();
        COSDictionary fonts = new COSDictionary();
        COSDictionary shared = new COSDictionary();
        shared.setItem(COSName.FONT, fonts);
        Map<COSDictionary, int[]> numbers = new IdentityHashMap<>();
        for (PDPage page : document.getPages()) {
            if (has(page)) {
                COSDictionary own = page.getCOSObject();
                numbers.put(own, slim(own, tree, styles, used));
                own.setItem(COSName.RESOURCES, resources(own, shared));
            }
        }
        tree.renumber(numbers);
        fonts.addAll(Faces.shared().fonts(used));
        document.getPages().getCOSObject().setItem(COSName.RESOURCES, shared);
    }

    private int[] slim(
            COSDictionary page,
            TagTree tree,
            Function<COSDictionary, Optional<Integer>> styles,
            Glyphs used)
            throws IOException {
        COSDictionary resources = dictionary(page, COSName.RESOURCES);
        Map<COSName, Integer> faces = new HashMap<>();
        COSDictionary fonts = dictionary(resources, COSName.FONT);
        for (COSName name : fonts.keySet()) {
            faces.put(name, styles.apply(fonts.getCOSDictionary(name)).orElseThrow());
        }
        COSDictionary marks = dictionary(resources, COSName.PROPERTIES);
        List<Op> ops = new PageOps(content(page), faces, marks, used).read();
        PageText text = new PageText(ops, (a, b) -> tree.follows(page, a, b), contents(ops));
        byte[] body = text.write();
        Buffer all = new Buffer();
        byte[] last = behind.getOrDefault(page, NOTHING);
        all.write(body, 0, body.length);
        all.write(last, 0, last.length);
        page.setItem(COSName.CONTENTS, Streams.of(all.toByteArray()));
        return text.numbers();
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
        resources.setItem(COSName.FONT, shared.getItem(COSName.FONT));
        return resources;
    }

    private static byte[] content(COSDictionary page) throws IOException {
        COSBase content = page.getDictionaryObject(COSName.CONTENTS);
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        if (content instanceof COSArray parts) {
            for (int i = 0; i < parts.size(); i++) {
                copy((COSStream) parts.getObject(i), all);
            }
        } else {
            copy((COSStream) content, all);
        }
        return all.toByteArray();
    }

    private static void copy(COSStream part, ByteArrayOutputStream all) throws IOException {
        try (InputStream in = part.createInputStream()) {
            in.transferTo(all);
        }
        all.write('\n');
    }
}
