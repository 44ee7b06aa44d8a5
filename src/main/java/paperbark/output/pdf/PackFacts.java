package paperbark.output.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/**
 * What a pack says of itself, and where it lies in the run.
 *
 * @param firstPage its first page in the run, from 0
 * @param pageCount how many it has
 * @param marks its bookmarks, with the page in the run
 * @param title what it calls itself
 * @param author whose it is
 * @param metadata what it says of itself in XML
 */
public record PackFacts(
        int firstPage,
        int pageCount,
        List<Bookmark> marks,
        String title,
        String author,
        String metadata) {
    /** Keeps the list from being changed. */
    public PackFacts {
        marks = List.copyOf(marks);
    }

    /** A bookmark: its words and its page, from 0. */
    public record Bookmark(String title, int page) {}

    /** Those of a pack whose first page lies there in the run. */
    static PackFacts of(PackReader pack, int firstPage) throws IOException {
        COSDictionary says = (COSDictionary) pack.object(pack.root(COSName.INFO));
        return new PackFacts(
                firstPage,
                pack.parts()[1],
                marks(pack, firstPage),
                says.getString(COSName.TITLE, ""),
                says.getString(COSName.AUTHOR, ""),
                metadata(pack));
    }

    private static List<Bookmark> marks(PackReader pack, int firstPage) throws IOException {
        List<Bookmark> marks = new ArrayList<>();
        COSDictionary outlines = pack.dictionary(pack.catalog(), COSName.OUTLINES);
        COSDictionary mark = pack.dictionary(outlines, COSName.FIRST);
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

    private static String metadata(PackReader pack) throws IOException {
        if (!(pack.catalog().getItem(COSName.METADATA) instanceof Ref metadata)) {
            return "";
        }
        PackReader.Piece body = pack.body(pack.text(metadata.number()));
        return new String(body.text(), body.from(), body.length(), StandardCharsets.UTF_8);
    }
}
