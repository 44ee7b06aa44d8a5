package paperbark.output.paper;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.MemoryUsageSetting;
import org.apache.pdfbox.io.RandomAccessStreamCache;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import paperbark.output.BatchInfo;
import paperbark.output.pdf.PackFacts;
import paperbark.output.pdf.PackReader;
import paperbark.output.pdf.PackWriter;
import paperbark.output.pdf.PageNote;
import paperbark.output.pdf.RunWriter;

/** Many packs as one document for a duplex printer: each begins on a fresh sheet, with a mark. */
public final class PrintRun {
    private final RunWriter run;
    private final PDDocumentOutline outline = new PDDocumentOutline();
    private final Map<String, PDOutlineItem> groups = new LinkedHashMap<>();
    private final List<Conformance> claims = new ArrayList<>();
    private Optional<String> firm = Optional.empty();
    private PageNote seal;

    private PrintRun(OutputStream out, PageNote seal) throws IOException {
        run = new RunWriter(out);
        this.seal = seal;
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
        PageNote first = seal.map(SealLine::of).orElseGet(PageNote::new);
        PrintRun run = new PrintRun(out, first);
        if (packs.isEmpty()) {
            run.run.blank();
        } else {
            if (front.isPresent()) {
                run.addFront(front.get());
            }
            for (int i = 0; i < packs.size(); i++) {
                run.add(packs.get(i), i);
            }
        }
        run.finish(batch);
    }

    private void finish(BatchInfo batch) throws IOException {
        try (PDDocument shell = new PDDocument()) {
            if (outline.hasChildren()) {
                shell.getDocumentCatalog().setDocumentOutline(outline);
            }
            new Imprint("Print run", firm.orElse(""), batch, Conformance.ofAll(claims))
                    .stamp(shell);
            run.finish(shell);
        }
    }

    private void addFront(byte[] front) throws IOException {
        PackFacts added = join(ready(front), "Run sheet", new PageNote());
        outline.addLast(bookmark(added.title(), added.firstPage()));
    }

    private void add(RunPack pack, int place) throws IOException {
        byte[] pdf = Files.readAllBytes(pack.file());
        Optional<PackReader> still = PackReader.ofStill(pdf);
        PackFacts added =
                join(
                        still.isPresent() ? still.get() : written(pdf),
                        pack.reference(),
                        EdgeMark.of(place, pack.place()));
        PDOutlineItem job = bookmark(pack.reference(), added.firstPage());
        added.marks().forEach(mark -> job.addLast(bookmark(mark.title(), mark.page())));
        PDOutlineItem group = groups.get(pack.group());
        if (group == null) {
            group = bookmark(pack.group(), added.firstPage());
            groups.put(pack.group(), group);
            outline.addLast(group);
        }
        group.addLast(job);
    }

    /** A pack with live fields, which are on paper what they show, or one of an older program. */
    private static PackReader written(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf, "", null, null, scratch())) {
            FormTags.flatten(document);
            document.getDocumentCatalog().setAcroForm(null);
            return ready(PackWriter.bytes(document));
        }
    }

    private static PackReader ready(byte[] pdf) throws IOException {
        return PackReader.ofStill(pdf)
                .orElseThrow(() -> new IOException("A pack cannot be read again."));
    }

    // The library's own choice of folder is fixed when the process starts.
    private static RandomAccessStreamCache.StreamCacheCreateFunction scratch() {
        return MemoryUsageSetting.setupTempFileOnly()
                .setTempDir(new File(System.getProperty("java.io.tmpdir")))
                .streamCache;
    }

    private PackFacts join(PackReader pack, String title, PageNote note) throws IOException {
        PackFacts added = run.add(pack, title, note.and(seal));
        seal = new PageNote();
        firm = firm.or(() -> Optional.of(added.author()));
        String said = added.metadata();
        claims.add(
                new Conformance(said.contains("<pdfuaid:part>"), said.contains("<pdfaid:part>")));
        if (added.pageCount() % 2 == 1) {
            run.blank();
        }
        return added;
    }

    private PDOutlineItem bookmark(String title, int page) {
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(title);
        item.setDestination(run.to(page));
        return item;
    }
}
