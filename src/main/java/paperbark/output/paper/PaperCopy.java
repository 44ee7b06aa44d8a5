package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.multipdf.Splitter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * One paper out of a pack for somebody who gets no other: a document of its own in which nothing of
 * the other papers is left, not even unseen. Tags, language and claims of the pack stay.
 */
public final class PaperCopy {
    private static final int FEWEST_DIGITS = 5;

    private PaperCopy() {}

    /**
     * The paper.
     *
     * @param pack the pack's file
     * @param first its first page in the pack, from 1
     * @param pages how many pages it has, at least 1
     * @throws IOException when the pack cannot be read or has no such pages
     */
    public static byte[] of(Path pack, int first, int pages) throws IOException {
        try (PDDocument all = Loader.loadPDF(pack.toFile())) {
            if (first < 1 || pages < 1 || first + pages - 1 > all.getNumberOfPages()) {
                throw new IOException(pack.getFileName() + " has no such pages.");
            }
            Splitter splitter = new Splitter();
            splitter.setStartPage(first);
            splitter.setEndPage(first + pages - 1);
            splitter.setSplitAtPage(pages);
            try (PDDocument copy = splitter.split(all).get(0)) {
                return saved(all.getDocumentCatalog(), copy, first);
            }
        }
    }

    private static byte[] saved(PDDocumentCatalog pack, PDDocument copy, int first)
            throws IOException {
        PDDocumentCatalog catalog = copy.getDocumentCatalog();
        catalog.setMetadata(pack.getMetadata());
        catalog.setOutputIntents(pack.getOutputIntents());
        catalog.setOpenAction(null);
        // The same paper gives the same bytes each time.
        copy.setDocumentId((long) first);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        copy.save(out);
        return out.toByteArray();
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
