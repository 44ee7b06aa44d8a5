package paperbark.output.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDObjectReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;

/**
 * Ties a foreign page to the structure tree of its pack: what it shows becomes one figure with
 * words for those who do not see it, and each live field a form of its own.
 */
final class FormTags {
    private final PDDocument document;
    private final PDPage page;

    FormTags(PDDocument document, PDPage page) {
        this.document = document;
        this.page = page;
    }

    /**
     * Puts the page into the tree.
     *
     * @param place the element that holds the page's place
     * @param words what the page is
     * @throws IOException when the content of the page cannot be read
     */
    void put(PDStructureElement place, String words) throws IOException {
        PageContent.becomeFigure(document, page);
        PDStructureElement figure = child("Figure", place);
        figure.setAlternateDescription(words);
        figure.getCOSObject().setInt(COSName.K, 0);
        COSDictionary layout = new COSDictionary();
        layout.setName(COSName.O, "Layout");
        layout.setItem(COSName.BBOX, page.getMediaBox());
        figure.getCOSObject().setItem(COSName.A, layout);
        COSArray shown = new COSArray();
        shown.add(figure.getCOSObject());
        ParentTree parents = ParentTree.of(document);
        parents.set(page.getStructParents(), shown);
        for (PDAnnotation annotation : page.getAnnotations()) {
            PDStructureElement form = child("Form", place);
            PDObjectReference reference = new PDObjectReference();
            reference.setReferencedObject(annotation);
            form.appendKid(reference);
            annotation.setStructParent(parents.add(form.getCOSObject()));
        }
        page.getCOSObject().setName("Tabs", "S");
        nameFields();
    }

    /**
     * Makes the live fields of a pack part of its pages: on paper they are what they show.
     *
     * @param pack a pack with or without fields
     */
    static void flatten(PDDocument pack) throws IOException {
        PDAcroForm fields = pack.getDocumentCatalog().getAcroForm(null);
        if (fields == null) {
            return;
        }
        List<PDPage> pages = new ArrayList<>();
        for (PDPage page : pack.getPages()) {
            if (page.getAnnotations().stream().anyMatch(PDAnnotationWidget.class::isInstance)) {
                pages.add(page);
                untie(page, ParentTree.of(pack));
            }
        }
        fields.flatten(List.copyOf(fields.getFields()), false);
        for (PDPage page : pages) {
            PageContent.becomeFigure(pack, page);
        }
    }

    private static void untie(PDPage page, ParentTree parents) throws IOException {
        for (PDAnnotation annotation : page.getAnnotations()) {
            if (annotation.getStructParent() >= 0) {
                COSDictionary form = parents.remove(annotation.getStructParent());
                form.getCOSDictionary(COSName.P).getCOSArray(COSName.K).removeObject(form);
            }
        }
    }

    private PDStructureElement child(String type, PDStructureElement parent) {
        PDStructureElement child = new PDStructureElement(type, parent);
        child.setPage(page);
        parent.appendKid(child);
        return child;
    }

    /** A field without words of its own is read aloud by its name. */
    private void nameFields() {
        PDAcroForm fields = document.getDocumentCatalog().getAcroForm(null);
        if (fields != null) {
            for (PDField field : fields.getFieldTree()) {
                if (field.getAlternateFieldName() == null) {
                    field.setAlternateFieldName(field.getFullyQualifiedName());
                }
            }
        }
    }
}
