package paperbark.output.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import paperbark.output.PaperKind;

/** The text of pages as a reader takes it, with every run of white space as one space. */
final class PdfText {
    private PdfText() {}

    /** How many pages a pack has, with the blank backs between its papers. */
    static int pages(Pack pack) {
        return pack.papers().stream().mapToInt(PaperPages::lastPage).max().orElse(0);
    }

    static String of(Pack pack) {
        return of(pack.pdf(), 1, Integer.MAX_VALUE);
    }

    static String of(Pack pack, PaperKind kind) {
        PaperPages pages =
                pack.papers().stream().filter(p -> p.kind() == kind).findFirst().orElseThrow();
        return of(pack.pdf(), pages.firstPage(), pages.firstPage() + pages.pageCount() - 1);
    }

    static String of(byte[] pdf, int first, int last) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            stripper.setStartPage(first);
            stripper.setEndPage(last);
            return stripper.getText(document).replaceAll("\\s+", " ");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
