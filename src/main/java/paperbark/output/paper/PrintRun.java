package paperbark.output.paper;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.MemoryUsageSetting;
import org.apache.pdfbox.io.RandomAccessStreamCache;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import paperbark.output.BatchInfo;

/** Many packs as one document for a duplex printer: each begins on a fresh sheet, with a mark. */
public final class PrintRun {
    private final PDDocument run;
    private final PDDocumentOutline outline = new PDDocumentOutline();
    private final Map<String, PDOutlineItem> groups = new LinkedHashMap<>();
    private final RunTree tree;
    private final EdgeMark marks;
    private final List<PDDocument> sources = new ArrayList<>();
    private final List<Conformance> claims = new ArrayList<>();

    private PrintRun(PDDocument run) {
        this.run = run;
        tree = new RunTree(run);
        marks = new EdgeMark(run);
    }

    /**
     * Writes all packs in the given order, each with an even number of pages, with bookmarks by
     * group, job and paper. Without packs it is one blank page.
     *
     * @param front what lies before them, such as a run sheet
     * @param seal of the ledger before the batch, printed at the foot of the first page
     * @param out is left open
     * @throws IOException when a pack cannot be read or the run not be written
     */
    public static void write(
            List<RunPack> packs,
            Optional<byte[]> front,
            Optional<String> seal,
            BatchInfo batch,
            OutputStream out)
            throws IOException {
        try (PDDocument document = new PDDocument(scratch())) {
            document.setVersion(1.7f);
            if (packs.isEmpty()) {
                document.addPage(blank());
                document.save(out);
                return;
            }
            PrintRun run = new PrintRun(document);
            try {
                if (front.isPresent()) {
                    run.addFront(front.get());
                }
                for (int i = 0; i < packs.size(); i++) {
                    run.add(packs.get(i), i);
                }
                document.getDocumentCatalog().setDocumentOutline(run.outline);
                String firm = run.sources.get(0).getDocumentInformation().getAuthor();
                new Imprint("Print run", firm, batch, Conformance.ofAll(run.claims))
                        .stamp(document);
                if (seal.isPresent()) {
                    SealLine.draw(document, document.getPage(0), seal.get());
                }
                document.save(out);
            } finally {
                for (PDDocument source : run.sources) {
                    source.close();
                }
            }
        }
    }

    // The library's own choice of folder is fixed when the process starts.
    private static RandomAccessStreamCache.StreamCacheCreateFunction scratch() {
        return MemoryUsageSetting.setupTempFileOnly()
                .setTempDir(new File(System.getProperty("java.io.tmpdir")))
                .streamCache;
    }

    private void addFront(byte[] front) throws IOException {
        PDDocument source = Loader.loadPDF(front);
        String title = source.getDocumentInformation().getTitle();
        outline.addLast(bookmark(title, source.getPage(0)));
        join(source, title);
    }

    private void add(RunPack pack, int place) throws IOException {
        PDDocument source = Loader.loadPDF(pack.file().toFile(), scratch());
        FormTags.flatten(source);
        PDPage first = source.getPage(0);
        PDOutlineItem job = bookmark(pack.reference(), first);
        for (PDOutlineItem paper : source.getDocumentCatalog().getDocumentOutline().children()) {
            job.addLast(bookmark(paper.getTitle(), paper.findDestinationPage(source)));
        }
        PDOutlineItem group = groups.get(pack.group());
        if (group == null) {
            group = bookmark(pack.group(), first);
            groups.put(pack.group(), group);
            outline.addLast(group);
        }
        group.addLast(job);
        join(source, pack.reference());
        marks.draw(first, place, pack.place());
    }

    private void join(PDDocument source, String title) throws IOException {
        // Its pages point into it, so it stays open until all is saved.
        sources.add(source);
        claims.add(claims(source));
        tree.add(source, title);
        List<PDPage> pages = new ArrayList<>();
        source.getPages().forEach(pages::add);
        // The pages themselves and not copies, so that links and structure still find them.
        pages.forEach(run::addPage);
        if (pages.size() % 2 == 1) {
            run.addPage(blank());
        }
    }

    private static Conformance claims(PDDocument source) throws IOException {
        PDMetadata metadata = source.getDocumentCatalog().getMetadata();
        String said =
                metadata == null ? "" : new String(metadata.toByteArray(), StandardCharsets.UTF_8);
        return new Conformance(said.contains("<pdfuaid:part>"), said.contains("<pdfaid:part>"));
    }

    private static PDPage blank() {
        PDPage page = new PDPage(PDRectangle.A4);
        page.setResources(new PDResources());
        return page;
    }

    private static PDOutlineItem bookmark(String title, PDPage page) {
        PDPageFitDestination there = new PDPageFitDestination();
        there.setPage(page);
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(title);
        item.setDestination(there);
        return item;
    }
}
