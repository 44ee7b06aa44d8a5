package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;

/** Many packs as one document for a duplex printer: each paper begins on a fresh sheet. */
public final class PrintRun {
    private PrintRun() {}

    /**
     * All packs in the given order, with a blank page after each paper that ends on the front of a
     * sheet, and bookmarks by job and paper. Without packs it is one blank page.
     */
    public static byte[] of(List<Pack> packs) {
        List<PDDocument> sources = new ArrayList<>();
        try (PDDocument run = new PDDocument()) {
            PDDocumentOutline outline = new PDDocumentOutline();
            for (Pack pack : packs) {
                PDDocument source = Loader.loadPDF(pack.pdf());
                // Imported pages point into their source, which stays open until all is saved.
                sources.add(source);
                flatten(source);
                add(pack, source, run, outline);
            }
            if (packs.isEmpty()) {
                run.addPage(new PDPage(PDRectangle.A4));
            } else {
                run.getDocumentCatalog().setDocumentOutline(outline);
                Imprint.of(packs.get(0).caseFile(), "Print run", Claims.BOTH).stamp(run);
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            run.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            sources.forEach(PrintRun::close);
        }
    }

    private static void add(Pack pack, PDDocument source, PDDocument run, PDDocumentOutline outline)
            throws IOException {
        PDOutlineItem job = new PDOutlineItem();
        job.setTitle(pack.jobReference());
        outline.addLast(job);
        for (PaperPages paper : pack.papers()) {
            PDPage first = null;
            for (int i = 0; i < paper.pageCount(); i++) {
                PDPage page = run.importPage(source.getPage(paper.firstPage() - 1 + i));
                // Links would lead, and tie, the copy to the pages of its source.
                page.setAnnotations(List.of());
                first = first == null ? page : first;
            }
            bookmark(job, paper, first);
            if (paper.pageCount() % 2 == 1) {
                run.addPage(new PDPage(PDRectangle.A4));
            }
        }
    }

    /** The live fields of a buyer's form are on paper what they show. */
    private static void flatten(PDDocument source) throws IOException {
        PDAcroForm fields = source.getDocumentCatalog().getAcroForm(null);
        if (fields != null) {
            fields.flatten(List.copyOf(fields.getFields()), false);
        }
    }

    private static void bookmark(PDOutlineItem job, PaperPages paper, PDPage first) {
        PDPageFitDestination there = new PDPageFitDestination();
        there.setPage(first);
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(paper.kind().title());
        item.setDestination(there);
        if (!job.hasChildren()) {
            job.setDestination(there);
        }
        job.addLast(item);
    }

    private static void close(PDDocument source) {
        try {
            source.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
