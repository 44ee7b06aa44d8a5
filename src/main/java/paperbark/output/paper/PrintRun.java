package paperbark.output.paper;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.MemoryUsageSetting;
import org.apache.pdfbox.io.RandomAccessStreamCache;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;

/** Many packs as one document for a duplex printer: each paper begins on a fresh sheet. */
public final class PrintRun {
    private PrintRun() {}

    /**
     * Writes all packs in the given order, each with an even number of pages, with bookmarks by job
     * and paper. Without packs it is one blank page.
     *
     * @param out is left open
     * @throws IOException when a pack cannot be read or the run not be written
     */
    public static void write(List<FiledPack> packs, OutputStream out) throws IOException {
        write(packs, Optional.empty(), out);
    }

    /**
     * The same with the ledger's last seal at the foot of the first page.
     *
     * @param seal of the ledger before the batch; empty where the firm keeps none
     * @param out is left open
     * @throws IOException when a pack cannot be read or the run not be written
     */
    public static void write(List<FiledPack> packs, Optional<String> seal, OutputStream out)
            throws IOException {
        List<PDDocument> sources = new ArrayList<>();
        try (PDDocument run = new PDDocument(scratch())) {
            run.setVersion(1.7f);
            if (packs.isEmpty()) {
                run.addPage(blank());
            } else {
                merge(packs, run, sources);
            }
            if (seal.isPresent()) {
                SealLine.draw(run, run.getPage(0), seal.get());
            }
            run.save(out);
        } finally {
            for (PDDocument source : sources) {
                source.close();
            }
        }
    }

    // The library's own choice of folder is fixed when the process starts.
    private static RandomAccessStreamCache.StreamCacheCreateFunction scratch() {
        return MemoryUsageSetting.setupTempFileOnly()
                .setTempDir(new File(System.getProperty("java.io.tmpdir")))
                .streamCache;
    }

    private static void merge(List<FiledPack> packs, PDDocument run, List<PDDocument> sources)
            throws IOException {
        PDDocumentOutline outline = new PDDocumentOutline();
        RunTree tree = new RunTree(run);
        for (FiledPack pack : packs) {
            PDDocument source = Loader.loadPDF(pack.file().toFile(), scratch());
            // Its pages point into it, so it stays open until all is saved.
            sources.add(source);
            FormTags.flatten(source);
            String reference = pack.caseFile().job().reference();
            tree.add(source, reference);
            outline.addLast(bookmark(reference, pack.papers(), source));
            addPages(source, run);
        }
        run.getDocumentCatalog().setDocumentOutline(outline);
        Conformance claims = Conformance.ofAll(packs.stream().map(FiledPack::claims).toList());
        Imprint.of(packs.get(0).caseFile(), "Print run", claims).stamp(run);
    }

    private static void addPages(PDDocument source, PDDocument run) {
        List<PDPage> pages = new ArrayList<>();
        source.getPages().forEach(pages::add);
        // The pages themselves and not copies, so that links and structure still find them.
        pages.forEach(run::addPage);
        if (pages.size() % 2 == 1) {
            run.addPage(blank());
        }
    }

    private static PDPage blank() {
        PDPage page = new PDPage(PDRectangle.A4);
        page.setResources(new PDResources());
        return page;
    }

    private static PDOutlineItem bookmark(
            String reference, List<PaperPages> papers, PDDocument source) {
        PDOutlineItem job = new PDOutlineItem();
        job.setTitle(reference);
        for (PaperPages paper : papers) {
            PDPageFitDestination there = new PDPageFitDestination();
            there.setPage(source.getPage(paper.firstPage() - 1));
            PDOutlineItem item = new PDOutlineItem();
            item.setTitle(paper.kind().title());
            item.setDestination(there);
            if (!job.hasChildren()) {
                job.setDestination(there);
            }
            job.addLast(item);
        }
        return job;
    }
}
