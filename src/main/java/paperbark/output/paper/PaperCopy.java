package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * One paper out of a pack for somebody who gets no other: a document of its own in which nothing of
 * the other papers is left, not even unseen. Tags, language and claims of the pack stay. A link to
 * another paper leads to the first page.
 */
public final class PaperCopy {
    private static final int FEWEST_DIGITS = 5;

    /** What of the document's catalogue leads to pages: all of it goes. */
    private static final List<COSName> WAYS =
            List.of(
                    COSName.OUTLINES,
                    COSName.OPEN_ACTION,
                    COSName.NAMES,
                    COSName.DESTS,
                    COSName.PAGE_LABELS,
                    COSName.getPDFName("Threads"));

    private final PDDocument document;
    private final Set<COSDictionary> kept = Collections.newSetFromMap(new IdentityHashMap<>());

    private PaperCopy(PDDocument document) {
        this.document = document;
    }

    /**
     * The paper.
     *
     * @param pack the pack's file
     * @param first its first page in the pack, from 1
     * @param pages how many pages it has, at least 1
     * @throws IOException when the pack cannot be read or has no such pages
     */
    public static byte[] of(Path pack, int first, int pages) throws IOException {
        try (PDDocument document = Loader.loadPDF(pack.toFile())) {
            if (first < 1 || pages < 1 || first + pages - 1 > document.getNumberOfPages()) {
                throw new IOException(pack.getFileName() + " has no such pages.");
            }
            PaperCopy copy = new PaperCopy(document);
            copy.keep(first, first + pages - 1);
            // The same paper gives the same bytes each time.
            document.setDocumentId((long) first);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        }
    }

    private void keep(int first, int last) throws IOException {
        for (int page = document.getNumberOfPages(); page >= 1; page--) {
            if (page < first || page > last) {
                document.removePage(page - 1);
            }
        }
        COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
        WAYS.forEach(catalog::removeItem);
        for (PDPage page : document.getPages()) {
            kept.add(page.getCOSObject());
        }
        for (COSDictionary page : List.copyOf(kept)) {
            COSArray notes = page.getCOSArray(COSName.ANNOTS);
            for (int i = 0; notes != null && i < notes.size(); i++) {
                if (notes.getObject(i) instanceof COSDictionary note) {
                    turn(note);
                    kept.add(note);
                }
            }
        }
        new KeptTags(kept).prune(catalog.getCOSDictionary(COSName.STRUCT_TREE_ROOT));
        COSDictionary form = catalog.getCOSDictionary(COSName.ACRO_FORM);
        if (form != null) {
            fields(form, COSName.FIELDS);
        }
    }

    private void turn(COSDictionary note) {
        destination(note, COSName.DEST);
        COSDictionary action = note.getCOSDictionary(COSName.A);
        if (action != null) {
            destination(action, COSName.D);
        }
    }

    private void destination(COSDictionary link, COSName name) {
        COSArray place = link.getCOSArray(name);
        if (place != null && place.size() > 0 && !kept.contains(place.getObject(0))) {
            place.set(0, document.getPage(0).getCOSObject());
        } else if (place == null) {
            // Names of places are gone with the list of them.
            link.removeItem(name);
        }
    }

    /** Fields of other pages go, with what was filled in; says whether any is left. */
    private boolean fields(COSDictionary of, COSName name) {
        COSArray all = of.getCOSArray(name);
        if (all == null) {
            return kept.contains(of);
        }
        COSArray left = new COSArray();
        for (int i = 0; i < all.size(); i++) {
            COSBase field = all.getObject(i);
            if (field instanceof COSDictionary found && fields(found, COSName.KIDS)) {
                left.add(all.get(i));
            }
        }
        of.setItem(name, left);
        return left.size() > 0;
    }

    /**
     * Whether a document shows one of these numbers, however its digits are grouped.
     *
     * @param numbers of at least five digits; shorter ones are passed over, because they stand
     *     everywhere
     * @throws IOException when it cannot be read
     */
    public static boolean shows(byte[] pdf, Set<String> numbers) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = bare(new PDFTextStripper().getText(document));
            return numbers.stream()
                    .map(PaperCopy::bare)
                    .anyMatch(n -> n.length() >= FEWEST_DIGITS && text.contains(n));
        }
    }

    private static String bare(String text) {
        return text.replaceAll("[\\s-]+", "");
    }
}
