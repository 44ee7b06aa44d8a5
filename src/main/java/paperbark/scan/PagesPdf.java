package paperbark.scan;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Puts pages of a pile into a PDF of their own, upright and otherwise as they were scanned. What
 * could act in a page is left behind.
 */
public final class PagesPdf {
    // A page's number within its paper, so that pages that come later go where they belong.
    private static final COSName NUMBER = COSName.getPDFName("PaperbarkPage");
    private static final List<COSName> LEFT_BEHIND =
            List.of(COSName.ANNOTS, COSName.AA, COSName.STRUCT_PARENTS, COSName.METADATA);

    private PagesPdf() {}

    /**
     * Writes a paper: the pages that are in a file already, and those of the pile among them.
     *
     * @param before the file with the pages that came earlier
     * @throws UnreadablePile when the earlier file is damaged
     * @throws IOException when a page cannot be read or the file not be written
     */
    public static void write(
            Path pile, List<SeenPage> pages, Optional<Path> before, String title, OutputStream out)
            throws IOException {
        try (Pile from = Pile.open(pile);
                PDDocument scratch = new PDDocument();
                PDDocument earlier = before.isEmpty() ? new PDDocument() : opened(before.get());
                PDDocument target = new PDDocument()) {
            List<PDPage> all = new ArrayList<>();
            earlier.getPages().forEach(all::add);
            for (SeenPage page : pages) {
                PDPage copy = from.copyTo(scratch, page.number());
                copy.setRotation((copy.getRotation() + 90 * page.quarterTurns()) % 360);
                LEFT_BEHIND.forEach(copy.getCOSObject()::removeItem);
                copy.getCOSObject()
                        .setInt(NUMBER, page.place().map(PrintedPage::page).orElse(page.number()));
                all.add(copy);
            }
            all.sort(Comparator.comparingInt(p -> p.getCOSObject().getInt(NUMBER, 0)));
            for (PDPage page : all) {
                PDPage copy = target.importPage(page);
                copy.setResources(page.getResources());
                copy.setRotation(page.getRotation());
            }
            target.getDocumentInformation().setTitle(title);
            target.save(out);
        }
    }

    private static PDDocument opened(Path file) throws IOException {
        try {
            return Loader.loadPDF(new RandomAccessReadBufferedFile(file));
        } catch (IOException | RuntimeException e) {
            throw Piles.damaged();
        }
    }
}
