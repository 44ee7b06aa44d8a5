package paperbark.output.form;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts.FontName;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.apache.pdfbox.pdmodel.interactive.action.PDFormFieldAdditionalActions;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDCheckBox;
import org.apache.pdfbox.pdmodel.interactive.form.PDChoice;
import org.apache.pdfbox.pdmodel.interactive.form.PDComboBox;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDListBox;
import org.apache.pdfbox.pdmodel.interactive.form.PDRadioButton;
import org.apache.pdfbox.pdmodel.interactive.form.PDTerminalField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTextField;
import paperbark.output.Typeface;

/** Draws made-up forms; places are millimetres from the top left. */
final class FormSketch {
    private static final float MM = 72f / 25.4f;

    private final PDDocument document = new PDDocument();
    private final PDAcroForm form = new PDAcroForm(document);
    private final PDFont plain = font(Typeface.shared().regular());
    private final PDFont bold = font(Typeface.shared().bold());
    private PDPage page;

    /** A sheet of A4 without anything. */
    FormSketch() {
        PDResources resources = new PDResources();
        resources.put(COSName.HELV, new PDType1Font(FontName.HELVETICA));
        form.setDefaultResources(resources);
        form.setDefaultAppearance("/Helv 0 Tf 0 g");
        newPage();
    }

    private PDFont font(org.apache.fontbox.ttf.TrueTypeFont font) {
        try {
            return PDType0Font.load(document, font, true);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    FormSketch newPage() {
        page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        return this;
    }

    PDDocument document() {
        return document;
    }

    PDAcroForm form() {
        return form;
    }

    PDPage page() {
        return page;
    }

    private interface Drawing {
        void on(PDPageContentStream canvas) throws IOException;
    }

    private FormSketch draw(Drawing drawing) {
        try (PDPageContentStream canvas =
                // Without a state saved around all before, which would nest them ever deeper.
                new PDPageContentStream(document, page, AppendMode.APPEND, true, false)) {
            drawing.on(canvas);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    private float down(float y) {
        return page.getMediaBox().getHeight() - y * MM;
    }

    FormSketch words(float x, float y, float size, String text) {
        return write(plain, new float[] {x, y, size}, text);
    }

    FormSketch strong(float x, float y, float size, String text) {
        return write(bold, new float[] {x, y, size}, text);
    }

    private FormSketch write(PDFont font, float[] at, String text) {
        return draw(
                canvas -> {
                    canvas.beginText();
                    canvas.setFont(font, at[2]);
                    canvas.newLineAtOffset(at[0] * MM, down(at[1]));
                    canvas.showText(text);
                    canvas.endText();
                });
    }

    FormSketch box(float x, float y, float width, float height) {
        return draw(
                canvas -> {
                    canvas.setLineWidth(0.6f);
                    canvas.addRect(x * MM, down(y + height), width * MM, height * MM);
                    canvas.stroke();
                });
    }

    FormSketch line(float x, float y, float width) {
        return draw(
                canvas -> {
                    canvas.setLineWidth(0.6f);
                    canvas.moveTo(x * MM, down(y));
                    canvas.lineTo((x + width) * MM, down(y));
                    canvas.stroke();
                });
    }

    PDTextField text(String name, float x, float y, float width, float height) {
        PDTextField field = new PDTextField(form);
        place(field, name, x, y, width, height);
        box(x, y, width, height);
        return field;
    }

    PDTextField lines(String name, float x, float y, float width, float height) {
        PDTextField field = text(name, x, y, width, height);
        field.setMultiline(true);
        return field;
    }

    PDTextField comb(String name, float x, float y, float cell, int cells) {
        PDTextField field = text(name, x, y, cell * cells, 7);
        field.setMaxLen(cells);
        field.setComb(true);
        for (int i = 1; i < cells; i++) {
            box(x + i * cell, y, 0, 7);
        }
        return field;
    }

    PDTextField date(String name, float x, float y, float width, String script) {
        PDTextField field = text(name, x, y, width, 7);
        PDActionJavaScript format = new PDActionJavaScript(script);
        PDFormFieldAdditionalActions actions = new PDFormFieldAdditionalActions();
        actions.setF(format);
        field.setActions(actions);
        return field;
    }

    PDChoice choice(String name, float x, float y, float width, String... options) {
        PDChoice field = new PDComboBox(form);
        place(field, name, x, y, width, 7);
        field.setOptions(List.of(options));
        box(x, y, width, 7);
        return field;
    }

    PDChoice list(String name, float x, float y, float width, String... options) {
        PDChoice field = new PDListBox(form);
        place(field, name, x, y, width, 20);
        field.setOptions(List.of(options));
        box(x, y, width, 20);
        return field;
    }

    PDCheckBox tick(String name, float x, float y, String on) {
        PDCheckBox field = new PDCheckBox(form);
        place(field, name, x, y, 4, 4);
        states(field.getWidgets().get(0), on);
        field.getCOSObject().setName(COSName.V, "Off");
        box(x, y, 4, 4);
        return field;
    }

    PDRadioButton radio(String name, float x, float[] ys, String... states) {
        PDRadioButton field = new PDRadioButton(form);
        field.setPartialName(name);
        List<PDAnnotationWidget> widgets = new java.util.ArrayList<>();
        for (int i = 0; i < states.length; i++) {
            PDAnnotationWidget widget = new PDAnnotationWidget();
            widget.getCOSObject().setItem(COSName.PARENT, field);
            put(widget, x, ys[i], 4, 4);
            states(widget, states[i]);
            box(x, ys[i], 4, 4);
            widgets.add(widget);
        }
        field.setWidgets(widgets);
        add(field);
        return field;
    }

    private void place(
            PDTerminalField field, String name, float x, float y, float width, float height) {
        field.setPartialName(name);
        put(field.getWidgets().get(0), x, y, width, height);
        add(field);
    }

    private void add(PDField field) {
        List<PDField> all = new java.util.ArrayList<>(form.getFields());
        all.add(field);
        form.setFields(all);
    }

    private void put(PDAnnotationWidget widget, float x, float y, float width, float height) {
        widget.setRectangle(new PDRectangle(x * MM, down(y + height), width * MM, height * MM));
        widget.setPage(page);
        widget.setPrinted(true);
        try {
            page.getAnnotations().add(widget);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void states(PDAnnotationWidget widget, String on) {
        COSDictionary states = new COSDictionary();
        states.setItem(COSName.getPDFName(on), cross(widget, true));
        states.setItem(COSName.Off, cross(widget, false));
        COSDictionary pictures = new COSDictionary();
        pictures.setItem(COSName.N, states);
        widget.getCOSObject().setItem(COSName.AP, pictures);
        widget.setAppearanceState("Off");
    }

    private PDAppearanceStream cross(PDAnnotationWidget widget, boolean on) {
        PDAppearanceStream picture = new PDAppearanceStream(document);
        float side = widget.getRectangle().getWidth();
        picture.setBBox(new PDRectangle(side, side));
        picture.setResources(new PDResources());
        try (OutputStream out = picture.getStream().createOutputStream(COSName.FLATE_DECODE);
                PDPageContentStream canvas = new PDPageContentStream(document, picture, out)) {
            if (on) {
                canvas.setLineWidth(1.2f);
                canvas.moveTo(side * 0.2f, side * 0.2f);
                canvas.lineTo(side * 0.8f, side * 0.8f);
                canvas.moveTo(side * 0.2f, side * 0.8f);
                canvas.lineTo(side * 0.8f, side * 0.2f);
                canvas.stroke();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return picture;
    }

    /** The finished form, the same each time. */
    byte[] pdf() {
        try {
            if (!form.getFields().isEmpty()) {
                document.getDocumentCatalog().setAcroForm(form);
            }
            document.setDocumentId(7L);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            document.close();
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
