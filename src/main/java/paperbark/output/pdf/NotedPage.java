package paperbark.output.pdf;

import java.io.IOException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/** The first page of a pack in a run, with what the run notes on it. */
final class NotedPage {
    private static final String OF_NOTES = "Run";

    private final DocumentWriter file;
    private final Glyphs used;
    private final int resourcesNumber;
    private final int fontNumbers;

    /**
     * First pages of a run.
     *
     * @param used is told which glyphs notes show
     * @param resourcesNumber the number of what pages of ours draw with
     * @param fontNumbers the number of the first of the fonts
     */
    NotedPage(DocumentWriter file, Glyphs used, int resourcesNumber, int fontNumbers) {
        this.file = file;
        this.used = used;
        this.resourcesNumber = resourcesNumber;
        this.fontNumbers = fontNumbers;
    }

    /**
     * Writes it.
     *
     * @param number that it has in the pack
     * @param parents how far its number in the tree of parents is moved on
     */
    void write(Moved moved, int number, int parents, PageNote note) throws IOException {
        COSDictionary page = moved.dictionary(number);
        if (page.containsKey(COSName.STRUCT_PARENTS)) {
            page.setInt(COSName.STRUCT_PARENTS, page.getInt(COSName.STRUCT_PARENTS) + parents);
        }
        boolean own =
                page.getItem(COSName.RESOURCES) instanceof Ref ref
                        && ref.number() == resourcesNumber;
        draw(note, page, own);
        if (!own) {
            page.setItem(COSName.RESOURCES, withFonts(number, moved));
        }
        moved.put(number, page, new Buffer());
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
        Buffer dictionary = new Buffer();
        dictionary.text("<</Filter/FlateDecode/Length ").number(body.length).text(">>");
        file.stream(number, dictionary, body);
        return new Ref(number);
    }

    /** What a page draws with, and the fonts of notes. */
    private COSDictionary withFonts(int page, Moved moved) throws IOException {
        PackReader pack = moved.pack();
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
}
