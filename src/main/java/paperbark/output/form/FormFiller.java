package paperbark.output.form;

import java.io.IOException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDPushButton;
import org.apache.pdfbox.pdmodel.interactive.form.PDTerminalField;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.output.RunLimit;
import paperbark.output.Typeface;
import paperbark.output.form.FieldFiller.Written;
import paperbark.output.form.Mapping.FieldRow;
import paperbark.output.form.Mapping.Stamp;

/** Fills one copy of a form with the facts of one job. */
final class FormFiller {
    private static final Logger LOG = System.getLogger("paperbark");
    private final ReadyForm ready;
    private final FormFile form;
    private final FormModel model;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Written> written = new ArrayList<>();

    FormFiller(ReadyForm ready, FormModel model) {
        this.ready = ready;
        this.form = ready.form();
        this.model = model;
    }

    /** Finished pages. */
    record Pages(byte[] pdf, int count, boolean marked) {}

    /** What was noticed on the way. */
    List<Finding> findings() {
        return findings;
    }

    /**
     * The filled form.
     *
     * @throws UnusableForm when the form cannot be filled, or a value of its table cannot be used
     */
    Pages fill() throws UnusableForm {
        findings.addAll(ready.noticed());
        Mapping mapping = ready.mapping();
        try (OpenedForm opened = OpenedForm.again(form.pdfName(), form.pdf())) {
            byte[] pdf = filled(opened, mapping);
            findings.addAll(RunLimit.USUAL.run(() -> ReadBack.of(pdf, written), () -> {}));
            return new Pages(pdf, opened.document().getNumberOfPages(), mapping.marked());
        } catch (RunLimit.Exceeded e) {
            throw UnusableForm.because(
                    form.pdfName(),
                    "Reading the filled form " + e.getMessage() + ".",
                    "Open it in a PDF reader and save it anew, or ask the buyer for it again.");
        } catch (IOException | RuntimeException | StackOverflowError | LinkageError e) {
            LOG.log(Level.DEBUG, "a form that cannot be filled", e);
            throw UnusableForm.because(
                    form.pdfName(),
                    "Something in the form is damaged, so that it cannot be filled.",
                    "Open it in a PDF reader and save it anew, or ask the buyer for it again.");
        }
    }

    private byte[] filled(OpenedForm opened, Mapping mapping) throws IOException, UnusableForm {
        PDDocument document = opened.document();
        Optional<PDAcroForm> fields = opened.fields();
        boolean live = fields.isPresent() && !mapping.flatten();
        if (fields.isPresent()) {
            // Who types into a live field needs every letter of the typeface.
            fillFields(document, fields.get(), font(document, !live), mapping);
        }
        if (live) {
            LiveForm.clean(document, fields.get());
            return FlatPages.passedOn(document);
        }
        if (fields.isPresent()) {
            hideButtons(fields.get());
            fields.get().flatten(List.copyOf(fields.get().getFields()), false);
        }
        return flat(FlatPages.passedOn(document), mapping);
    }

    private static PDFont font(PDDocument document, boolean subset) throws IOException {
        return PDType0Font.load(document, Typeface.shared().regular(), subset);
    }

    private void fillFields(PDDocument document, PDAcroForm all, PDFont font, Mapping mapping)
            throws IOException, UnusableForm {
        Map<String, PDTerminalField> fields = Fields.of(all);
        FieldFiller filler = new FieldFiller(document, font, findings);
        for (FieldRow row : mapping.fields()) {
            Place.InRule place = new Place.InRule(mapping.file(), row.row());
            String value = model.value(place, row.value());
            PDTerminalField field = fields.get(row.field());
            if (field == null || !Fields.holdsValue(field)) {
                findings.add(Fields.missing(row.field(), fields.keySet(), place));
            } else {
                filler.fill(field, value, place);
            }
        }
        written.addAll(filler.written());
        findings.addAll(Fields.unmapped(form, fields.values(), mapping));
    }

    /** Buttons to send or print a form have no business on paper. */
    private static void hideButtons(PDAcroForm fields) {
        for (PDTerminalField field : Fields.of(fields).values()) {
            if (field instanceof PDPushButton) {
                for (PDAnnotationWidget widget : field.getWidgets()) {
                    widget.setHidden(widget.isHidden() || !widget.isPrinted());
                }
            }
        }
    }

    private byte[] flat(byte[] flattened, Mapping mapping) throws IOException, UnusableForm {
        try (PDDocument source = Loader.loadPDF(flattened);
                PDDocument target = new PDDocument()) {
            FlatPages.copy(source, target);
            if (!mapping.stamps().isEmpty()) {
                stamp(target, mapping);
            }
            return FlatPages.passedOn(target);
        }
    }

    private void stamp(PDDocument document, Mapping mapping) throws IOException, UnusableForm {
        Stamper stamper = new Stamper(document, font(document, true));
        for (Stamp stamp : mapping.stamps()) {
            Place.InRule place = new Place.InRule(mapping.file(), stamp.row());
            String value = DateForm.usual(model.value(place, stamp.value()));
            if (stamp.page() < 1 || stamp.page() > document.getNumberOfPages()) {
                findings.add(noPage(stamp, place));
            } else if (value.isEmpty()) {
                continue;
            } else if (stamper.write(stamp, value)) {
                written.add(new Written(value, "place at " + at(stamp), place));
            } else {
                findings.add(tooLong(stamp, value, place));
            }
        }
    }

    private Finding noPage(Stamp stamp, Place place) {
        return Finding.of(
                FindingCode.FORM_FIELD_MISSING,
                place,
                "The form has no page " + stamp.page() + ".",
                "Correct the page in the mapping table.");
    }

    private static Finding tooLong(Stamp stamp, String value, Place place) {
        return Finding.of(
                        FindingCode.FORM_TEXT_TOO_LONG,
                        place,
                        "The width at "
                                + at(stamp)
                                + " is too small for the text even at 6 points.",
                        "Give the place more width in the mapping table, or shorten the value.")
                .seeing(value);
    }

    private static String at(Stamp stamp) {
        return String.format("%.0f mm across, %.0f mm down", stamp.x(), stamp.y());
    }
}
