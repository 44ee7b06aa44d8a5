package paperbark.output.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import paperbark.firm.FirmTables;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.output.CaseFile;

/**
 * The papers of a pack that ask for facts of the register, with live fields in the place of those
 * boxes: for whoever fills them in on a tablet. The pack itself stays as it is. No standard is
 * claimed: fields that change are nothing for an archive.
 */
public final class FillableSheet {
    // What a pack says of all its pages, and these few have not.
    private static final Set<String> OF_THE_PACK =
            Set.of(
                    "StructTreeRoot",
                    "MarkInfo",
                    "Outlines",
                    "PageMode",
                    "Dests",
                    "Names",
                    "PageLabels",
                    "OpenAction");

    private static final Map<String, Field> FIELDS =
            Field.values().stream().collect(Collectors.toMap(Field::key, Function.identity()));

    private FillableSheet() {}

    /**
     * The sheet of a booked job.
     *
     * @param tables the firm's, which say what a fact is chosen from
     * @param register SHA-256 of the register
     * @return a PDF, the same for the same input; empty where no box asks for a fact
     * @throws IOException when the pack cannot be read
     */
    public static Optional<byte[]> of(Pack pack, FirmTables tables, String register)
            throws IOException {
        List<FillBox> boxes =
                pack.fills().stream().filter(b -> FIELDS.containsKey(b.field())).toList();
        Job job = pack.caseFile().job();
        if (!job.isBooked() || boxes.isEmpty()) {
            return Optional.empty();
        }
        FormId id =
                new FormId(
                        job.reference(),
                        register,
                        job.origin().sheet(),
                        job.origin().row(),
                        job.stage());
        try (PDDocument document = Loader.loadPDF(pack.pdf())) {
            Map<Integer, PDPage> pages = keep(document, pages(pack, boxes));
            stamp(document, pack.caseFile(), id);
            LiveFields fields = new LiveFields(document, id);
            Map<String, Integer> times = new HashMap<>();
            for (FillBox box : boxes) {
                int nth = times.merge(box.field(), 1, Integer::sum);
                fields.add(pages.get(box.packPage()), box, nth, FIELDS.get(box.field()), tables);
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return Optional.of(out.toByteArray());
        }
    }

    /** All pages of the papers that the boxes are on. */
    private static Set<Integer> pages(Pack pack, List<FillBox> boxes) {
        Set<Integer> pages = new TreeSet<>();
        for (PaperPages paper : pack.papers()) {
            List<Integer> own =
                    IntStream.rangeClosed(paper.firstPage(), paper.lastPage()).boxed().toList();
            if (boxes.stream().anyMatch(b -> own.contains(b.packPage()))) {
                pages.addAll(own);
            }
        }
        return pages;
    }

    /** Takes the other pages out; gives those that stay by their number in the pack. */
    private static Map<Integer, PDPage> keep(PDDocument document, Set<Integer> wanted)
            throws IOException {
        Map<Integer, PDPage> kept = new HashMap<>();
        List<PDPage> others = new ArrayList<>();
        int number = 0;
        for (PDPage page : document.getPages()) {
            number++;
            if (wanted.contains(number)) {
                kept.put(number, page);
                // What it is tied to, or leads to, stays behind.
                page.getCOSObject().removeItem(COSName.STRUCT_PARENTS);
                page.setAnnotations(List.of());
                page.getCOSObject().setName("Tabs", "R");
            } else {
                others.add(page);
            }
        }
        others.forEach(document::removePage);
        return kept;
    }

    private static void stamp(PDDocument document, CaseFile caseFile, FormId id)
            throws IOException {
        String title = "Site sheet of job " + id.job() + ", to fill in";
        Imprint.of(caseFile, title, new Conformance(false, false)).stamp(document);
        COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
        OF_THE_PACK.forEach(key -> catalog.removeItem(COSName.getPDFName(key)));
        // It tells a sheet whose fields were made part of its pages.
        PDDocumentInformation says = document.getDocumentInformation();
        says.setCustomMetadataValue(FormId.NAME, id.text());
    }
}
