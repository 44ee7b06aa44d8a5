package paperbark.output.paper;

import com.openhtmltopdf.extend.FSCacheEx;
import com.openhtmltopdf.extend.FSCacheValue;
import com.openhtmltopdf.extend.impl.FSDefaultCacheStore;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfBoxAccessibilityHelper;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.CacheStore;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.reflect.Field;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import paperbark.output.PrintableText;
import paperbark.output.pdf.SlimPages;

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
     * Draws the pages, tagged for readers who cannot see them.
     *
     * @param document where the pages go
     * @param title of the document
     * @param sheet the styles of the papers
     * @param papers in order
     * @param gate decides about every address that the markup names
     * @throws TooManyPages when a paper takes more pages than any has
     * @throws TextOffPage when text would stand on no page
     */
    static LaidOut draw(
            PDDocument document,
            String title,
            StyleSheet sheet,
            List<PaperMarkup> papers,
            ResourceGate gate)
            throws IOException {
        int lean = LeanPages.from(papers, sheet.drawn().map(PaperMemory::frames));
        Optional<LaidOut> laidOut = drawn(document, title, sheet, papers, gate, lean);
        return laidOut.isPresent()
                ? laidOut.get()
                : drawn(document, title, sheet, papers, gate, papers.size()).orElseThrow();
    }

    /**
     * The same with nothing laid out from some paper on; empty, with nothing drawn, where it turns
     * out that head or foot of such a paper is not known.
     */
    private static Optional<LaidOut> drawn(
            PDDocument document,
            String title,
            StyleSheet sheet,
            List<PaperMarkup> papers,
            ResourceGate gate,
            int lean)
            throws IOException {
        Document markup = PackDocument.of(papers, title, sheet, lean);
        PaperNumbers numbers = new PaperNumbers();
        Fonts fonts = new Fonts();
        PdfRendererBuilder builder = builder(document, gate);
        fonts.register(builder);
        builder.useObjectDrawerFactory(numbers);
        builder.withW3cDocument(markup, gate.base());
        // Not closed here: that would close the document, which the caller saves.
        PdfBoxRenderer renderer = builder.buildPdfRenderer();
        fonts.standIn(renderer);
        Widths.over(renderer.getSharedContext());
        WatchedStyles styles =
                WatchedStyles.over(renderer, markup, sheet, papers.size(), MOST_PAGES);
        renderer.layout();
        if (!LeanPages.trim(renderer, papers, lean)) {
            return Optional.empty();
        }
        List<Extent> extents = extents(renderer, papers.subList(0, lean));
        extents.addAll(LeanPages.add(renderer, papers, lean));
        PaperTops.refuse(renderer, papers, extents);
        PageHeads heads =
                new PageHeads(
                        papers,
                        extents,
                        renderer.getRootBox().getLayer().getPages().size(),
                        sheet.drawn().map(PaperMemory::frames));
        if (!extents.subList(lean, papers.size()).stream().allMatch(heads::isKnown)) {
            return Optional.empty();
        }
        refuseExcess(extents);
        TextOffPage.refuse(renderer);
        numbers.of(extents);
        List<SignBox> boxes =
                ofAll(
                        papers,
                        extents,
                        SignBoxes.in(renderer),
                        SignBox::within,
                        ReadyPaper::boxes,
                        SignBox::moved);
        List<FillBox> fills =
                ofAll(
                        papers,
                        extents,
                        FillBoxes.in(renderer),
                        FillBox::within,
                        ReadyPaper::fills,
                        FillBox::moved);
        Redrawing redrawing =
                Redrawing.of(document, renderer, papers, extents, styles, heads, sheet.drawn());
        BarePage.replace(renderer, heads);
        paint(renderer);
        BlankBacks.clear(document, extents);
        return Optional.of(
                new LaidOut(
                        extents,
                        boxes,
                        fills,
                        id ->
                                Optional.ofNullable(
                                        PdfBoxAccessibilityHelper.getStructualElementForBox(
                                                renderer.getSharedContext().getBoxById(id))),
                        new SlimPages(document),
                        fonts,
                        redrawing,
                        gate));
    }

    /** The boxes of all papers, those of a known one where the others have theirs. */
    private static <B> List<B> ofAll(
            List<PaperMarkup> papers,
            List<Extent> extents,
            List<B> laidOut,
            BiFunction<List<B>, Extent, List<B>> within,
            Function<ReadyPaper, List<B>> known,
            BiFunction<B, Integer, B> moved) {
        List<B> all = new ArrayList<>();
        for (int i = 0; i < papers.size(); i++) {
            Extent extent = extents.get(i);
            papers.get(i)
                    .ready()
                    .map(known)
                    .orElseGet(() -> within.apply(laidOut, extent))
                    .forEach(box -> all.add(moved.apply(box, extent.first())));
        }
        return all;
    }

    private static void refuseExcess(List<Extent> extents) {
        for (Extent extent : extents) {
            if (extent.count() > MOST_PAGES) {
                throw new TooManyPages(extent.count(), MOST_PAGES);
            }
        }
    }

    /**
     * Paints the pages. What a document says of itself is left out: {@link Imprint} writes it, and
     * the library takes long to.
     */
    private static void paint(PdfBoxRenderer renderer) throws IOException {
        try {
            // The library has no other way to say so once it knows that the pages are tagged.
            Field said = PdfBoxRenderer.class.getDeclaredField("_pdfUaConformance");
            said.setAccessible(true);
            said.set(renderer, false);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
        renderer.createPDFKeepOpen();
    }

    private static PdfRendererBuilder builder(PDDocument document, ResourceGate gate) {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePDDocument(document);
        builder.usePageSupplier(new DrawnPages());
        // Contents are made small and packed later, see SlimPages.
        builder.testMode(true);
        builder.useFastMode();
        // What archives ask for beyond that, Imprint and SlimPages see to.
        builder.usePdfUaAccessibility(true);
        builder.toStream(OutputStream.nullOutputStream());
        builder.withProducer("Paperbark");
        builder.useReplacementText(String.valueOf(PrintableText.SUBSTITUTE));
        builder.useCacheStore(CacheStore.PDF_FONT_METRICS, METRICS);
        builder.useExternalResourceAccessControl(
                gate, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI);
        gate.serve(builder);
        return builder;
    }

    private static List<Extent> extents(PdfBoxRenderer renderer, List<PaperMarkup> papers) {
        List<PageBox> pages = renderer.getRootBox().getLayer().getPages();
        List<Extent> extents = new ArrayList<>();
        int end = pages.size();
        for (int i = papers.size() - 1; i >= 0; i--) {
            Box leaf = renderer.getSharedContext().getBoxById(PackDocument.LEAF + i);
            Box mark = renderer.getSharedContext().getBoxById(PackDocument.markOf(papers.get(i)));
            int first = pageAt(pages, mark.getAbsY());
            int last = pageAt(pages, leaf.getAbsY() + leaf.getHeight() - 1);
            boolean blankBack = i < papers.size() - 1 && last < end - 1;
            extents.add(0, new Extent(first, end - first - (blankBack ? 1 : 0)));
            end = first;
        }
        return extents;
    }

    private static int pageAt(List<PageBox> pages, int y) {
        return (int) pages.stream().filter(p -> p.getBottom() <= y).count();
    }
}
