package paperbark.output.paper;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.TTFSubsetter;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDTrueTypeFont;
import org.apache.pdfbox.pdmodel.font.encoding.WinAnsiEncoding;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceCharacteristicsDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDBorderStyleDictionary;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDComboBox;
import org.apache.pdfbox.pdmodel.interactive.form.PDTextField;
import org.apache.pdfbox.pdmodel.interactive.form.PDVariableText;
import paperbark.firm.ColumnGuide.Holds;
import paperbark.firm.FirmTables;
import paperbark.job.Field;
import paperbark.job.FieldForm;
import paperbark.output.Typeface;

/** Puts live fields onto the pages of a document, in the typeface of all papers. */
final class LiveFields {
    private static final float POINTS_PER_TENTH = 72f / 254f;
    private static final float BORDER = 0.8f;
    private static final String FONT = "Paper";
    private static final String LOOK = "/" + FONT + " 10 Tf 0 g";
    private static final float[] TINT = {0.91f, 0.95f, 1f};

    private static final Charset WESTERN = Charset.forName("windows-1252");

    private final PDDocument document;
    private final PDAcroForm form;
    private final FormId id;

    /**
     * The letters that a Western keyboard types: the whole typeface would be ten times as large.
     */
    private static final class Letters {
        private static final byte[] FONT = subset();

        private static byte[] subset() {
            try {
                TTFSubsetter letters = new TTFSubsetter(Typeface.shared().regular());
                for (int code = ' '; code <= 0xFF; code++) {
                    byte[] typed = {(byte) code};
                    letters.add(new String(typed, WESTERN).codePointAt(0));
                }
                ByteArrayOutputStream out = new ByteArrayOutputStream();
                letters.writeToStream(out);
                return out.toByteArray();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    LiveFields(PDDocument document, FormId id) throws IOException {
        this.document = document;
        this.id = id;
        form = new PDAcroForm(document);
        document.getDocumentCatalog().setAcroForm(form);
        PDResources resources = new PDResources();
        resources.put(
                COSName.getPDFName(FONT),
                PDTrueTypeFont.load(
                        document,
                        new ByteArrayInputStream(Letters.FONT),
                        WinAnsiEncoding.INSTANCE));
        form.setDefaultResources(resources);
        form.setDefaultAppearance(LOOK);
        sayWhatItIs();
    }

    private void sayWhatItIs() throws IOException {
        PDTextField said = new PDTextField(form);
        said.setPartialName(FormId.NAME);
        said.setReadOnly(true);
        said.getCOSObject().setString(COSName.V, id.text());
        PDAnnotationWidget nowhere = said.getWidgets().get(0);
        nowhere.setRectangle(new PDRectangle());
        nowhere.setHidden(true);
        place(nowhere, document.getPage(0));
        form.setFields(List.of(said));
    }

    /**
     * Adds the field of a box.
     *
     * @param nth which box of the same fact it is, from 1
     */
    void add(PDPage page, FillBox box, int nth, Field fact, FirmTables tables) throws IOException {
        FieldForm holds = FieldForm.of(fact, tables);
        PDVariableText field = empty(box, holds);
        field.setPartialName(id.field(fact.key(), nth));
        field.setAlternateFieldName(words(fact, holds));
        field.setDefaultAppearance(LOOK);
        PDAnnotationWidget widget = field.getWidgets().get(0);
        widget.setRectangle(rectangle(page, box));
        widget.setPrinted(true);
        look(widget, box.signs() == 1);
        place(widget, page);
        form.getCOSObject().getCOSArray(COSName.FIELDS).add(field.getCOSObject());
        field.setValue("");
    }

    private PDVariableText empty(FillBox box, FieldForm holds) {
        if (holds.holds() == Holds.CHOICE) {
            PDComboBox choice = new PDComboBox(form);
            choice.setEdit(true);
            choice.setOptions(holds.choices());
            return choice;
        }
        PDTextField text = new PDTextField(form);
        if (box.signs() > 1) {
            text.setMaxLen(box.signs());
            text.setComb(true);
        }
        return text;
    }

    private String words(Field fact, FieldForm holds) {
        return fact.label()
                + ", job "
                + id.job()
                + (holds.holds() == Holds.DAY ? ", a day such as 21/11/2026" : "");
    }

    /** A tint shows which boxes are live; it would hide the lines between the cells of signs. */
    private static void look(PDAnnotationWidget widget, boolean tinted) {
        if (tinted) {
            PDAppearanceCharacteristicsDictionary look =
                    new PDAppearanceCharacteristicsDictionary(new COSDictionary());
            look.setBackground(new PDColor(TINT, PDDeviceRGB.INSTANCE));
            widget.setAppearanceCharacteristics(look);
        }
        PDBorderStyleDictionary none = new PDBorderStyleDictionary();
        none.setWidth(0);
        widget.setBorderStyle(none);
    }

    private static void place(PDAnnotationWidget widget, PDPage page) throws IOException {
        widget.setPage(page);
        List<PDAnnotation> all = new ArrayList<>(page.getAnnotations());
        all.add(widget);
        page.setAnnotations(all);
    }

    private static PDRectangle rectangle(PDPage page, FillBox box) {
        PDRectangle sheet = page.getMediaBox();
        float left = sheet.getLowerLeftX() + box.left() * POINTS_PER_TENTH;
        float bottom = sheet.getUpperRightY() - (box.top() + box.height()) * POINTS_PER_TENTH;
        return new PDRectangle(
                left + BORDER,
                bottom + BORDER,
                box.width() * POINTS_PER_TENTH - 2 * BORDER,
                box.height() * POINTS_PER_TENTH - 2 * BORDER);
    }
}
