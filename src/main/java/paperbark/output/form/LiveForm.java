package paperbark.output.form;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;

/**
 * A form whose fields stay alive: everything that acts by itself or leads elsewhere is taken out.
 */
final class LiveForm {
    private static final Set<String> OF_CATALOG =
            Set.of(
                    "OpenAction",
                    "AA",
                    "Names",
                    "AF",
                    "Collection",
                    "URI",
                    "Perms",
                    "Legal",
                    "Threads",
                    "Metadata",
                    "Outlines",
                    "Dests",
                    "StructTreeRoot",
                    "MarkInfo",
                    "Extensions",
                    "PieceInfo",
                    "PageLabels");
    private static final Set<String> OF_FORM = Set.of("XFA", "CO", "SigFlags", "NeedAppearances");
    private static final Set<String> OF_PAGE =
            Set.of("AA", "AF", "PieceInfo", "Metadata", "B", "StructParents", "Tabs", "Trans");
    private static final Set<String> OF_FIELD = Set.of("A", "AA", "StructParent");

    private LiveForm() {}

    /** Takes out scripts, actions, attachments, links and comments. */
    static void clean(PDDocument document, PDAcroForm fields) throws IOException {
        remove(document.getDocumentCatalog().getCOSObject(), OF_CATALOG);
        remove(fields.getCOSObject(), OF_FORM);
        for (PDField field : fields.getFieldTree()) {
            remove(field.getCOSObject(), OF_FIELD);
        }
        for (PDPage page : document.getPages()) {
            remove(page.getCOSObject(), OF_PAGE);
            List<PDAnnotation> kept = new ArrayList<>();
            for (PDAnnotation annotation : page.getAnnotations()) {
                if (annotation instanceof PDAnnotationWidget) {
                    remove(annotation.getCOSObject(), OF_FIELD);
                    kept.add(annotation);
                }
            }
            page.setAnnotations(kept);
        }
    }

    private static void remove(COSDictionary from, Set<String> names) {
        names.forEach(name -> from.removeItem(COSName.getPDFName(name)));
    }
}
