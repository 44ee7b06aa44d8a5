package paperbark.output.paper;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;

/** The backs that stay empty because the next paper begins on a fresh sheet. */
final class BlankBacks {
    private static final List<COSName> SHOWN =
            List.of(COSName.CONTENTS, COSName.RESOURCES, COSName.ANNOTS, COSName.STRUCT_PARENTS);

    private BlankBacks() {}

    /** Takes head and foot, which the layout puts on every page, off the pages of no paper. */
    static void clear(PDDocument document, List<Extent> papers) {
        IntStream.range(0, document.getNumberOfPages())
                .filter(page -> papers.stream().noneMatch(p -> p.has(page)))
                .mapToObj(page -> document.getPage(page).getCOSObject())
                .forEach(BlankBacks::clear);
    }

    private static void clear(COSDictionary page) {
        SHOWN.forEach(page::removeItem);
        page.setItem(COSName.RESOURCES, new COSDictionary());
    }
}
