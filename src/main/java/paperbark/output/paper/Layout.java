package paperbark.output.paper;

import com.openhtmltopdf.extend.FSCacheEx;
import com.openhtmltopdf.extend.FSCacheValue;
import com.openhtmltopdf.extend.impl.FSDefaultCacheStore;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.CacheStore;
import com.openhtmltopdf.render.PageBox;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import paperbark.output.PrintableText;

/** Lays out one XHTML document as pages, without touching network or files outside the folder. */
final class Layout {
    // Metrics of the fonts, the same for all documents.
    private static final FSCacheEx<String, FSCacheValue> METRICS = new FSDefaultCacheStore();

    // A paper far beyond this comes from a slip in a template, and drawing it could fill the
    // memory.
    private static final int MOST_PAGES = 100;

    static {
        // The library would write to the terminal.
        XRLog.setLoggingEnabled(false);
    }

    private Layout() {}

    /**
     * Draws the pages.
     *
     * @param document where the pages go
     * @param markup what to lay out
     * @param papers how many papers the markup holds
     * @param gate decides about every address that the markup names
     * @return the first page of each paper, from 0, in order
     * @throws TooManyPages when a paper takes more pages than any has
     */
    static List<Integer> draw(PDDocument document, Document markup, int papers, ResourceGate gate)
            throws IOException {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePDDocument(document);
        builder.useFastMode();
        builder.toStream(OutputStream.nullOutputStream());
        builder.withProducer("Paperbark");
        builder.useReplacementText(String.valueOf(PrintableText.SUBSTITUTE));
        builder.useCacheStore(CacheStore.PDF_FONT_METRICS, METRICS);
        builder.useExternalResourceAccessControl(
                gate, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI);
        gate.serve(builder);
        Fonts.register(builder, document);
        builder.withW3cDocument(markup, gate.base());
        // Not closed here: that would close the document, which the caller saves.
        PdfBoxRenderer renderer = builder.buildPdfRenderer();
        renderer.layout();
        List<Integer> starts = firstPages(renderer, papers);
        refuseExcess(starts, renderer.getRootBox().getLayer().getPages().size());
        renderer.createPDFKeepOpen();
        return starts;
    }

    private static void refuseExcess(List<Integer> starts, int pages) {
        for (int i = 0; i < starts.size(); i++) {
            int end = i + 1 < starts.size() ? starts.get(i + 1) : pages;
            if (end - starts.get(i) > MOST_PAGES) {
                throw new TooManyPages(end - starts.get(i), MOST_PAGES);
            }
        }
    }

    private static List<Integer> firstPages(PdfBoxRenderer renderer, int papers) {
        List<PageBox> pages = renderer.getRootBox().getLayer().getPages();
        return IntStream.range(0, papers)
                .map(i -> renderer.getSharedContext().getBoxById(PackDocument.LEAF + i).getAbsY())
                .map(y -> pageAt(pages, y))
                .boxed()
                .toList();
    }

    private static int pageAt(List<PageBox> pages, int y) {
        return (int) pages.stream().filter(p -> p.getBottom() <= y).count();
    }
}
