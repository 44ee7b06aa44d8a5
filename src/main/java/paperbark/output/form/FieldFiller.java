package paperbark.output.form;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.form.PDButton;
import org.apache.pdfbox.pdmodel.interactive.form.PDChoice;
import org.apache.pdfbox.pdmodel.interactive.form.PDTerminalField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTextField;
import org.apache.pdfbox.pdmodel.interactive.form.PDVariableText;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** Puts values into fields and draws what they show. */
final class FieldFiller {
    private final PDDocument document;
    private final FieldFace face;
    private final List<Finding> findings;
    private final List<Written> written = new ArrayList<>();

    /** A filler that adds to the findings. */
    FieldFiller(PDDocument document, PDFont font, List<Finding> findings) {
        this.document = document;
        this.face = new FieldFace(document, font);
        this.findings = findings;
    }

    /**
     * What must be seen on the page.
     *
     * @param text as it was drawn
     * @param what the field or stamp, in words
     * @param place the row of the mapping table
     */
    record Written(String text, String what, Place place) {}

    /** What was drawn so far. */
    List<Written> written() {
        return written;
    }

    /** Fills one field; what does not go into it becomes a finding. */
    void fill(PDTerminalField field, String value, Place place) throws IOException {
        field.getCOSObject().removeItem(COSName.RV);
        if (field instanceof PDTextField text) {
            text(text, DateForm.applied(text, value), place);
        } else if (field instanceof PDChoice choice) {
            choice(choice, DateForm.applied(choice, value), place);
        } else if (field instanceof PDButton button) {
            if (!Ticks.set(document, button, value)) {
                findings.add(unknown(field, value, Ticks.options(button), place));
            }
        }
    }

    private void text(PDTextField field, String value, Place place) throws IOException {
        field.getCOSObject().setString(COSName.V, value);
        int most = field.getMaxLen();
        boolean comb = field.isComb() && most > 0 && !field.isMultiline();
        FieldFace.Kind kind =
                comb
                        ? FieldFace.Kind.COMB
                        : field.isMultiline() ? FieldFace.Kind.BLOCK : FieldFace.Kind.LINE;
        boolean tooMany = !comb && most > 0 && value.codePointCount(0, value.length()) > most;
        String shown =
                comb
                        ? new String(
                                Combs.letters(value, most), 0, Combs.letters(value, most).length)
                        : value;
        show(field, new Shown(shown, value, kind, most, tooMany), place);
    }

    private void choice(PDChoice field, String value, Place place) throws IOException {
        var meant = Choices.meant(field, value);
        if (meant.isEmpty()) {
            List<String> options = Choices.of(field).stream().map(Choices.Choice::shown).toList();
            findings.add(unknown(field, value, options, place));
            return;
        }
        Choices.set(field, meant.get());
        String shown =
                meant.get().stream().map(Choices.Choice::shown).collect(Collectors.joining("\n"));
        FieldFace.Kind kind = field.isCombo() ? FieldFace.Kind.LINE : FieldFace.Kind.BLOCK;
        show(field, new Shown(shown, shown, kind, 0, false), place);
    }

    /** A text on its way into a field. */
    private record Shown(
            String text, String value, FieldFace.Kind kind, int cells, boolean tooMany) {}

    private void show(PDVariableText field, Shown shown, Place place) throws IOException {
        boolean whole = !shown.tooMany();
        for (PDAnnotationWidget widget : field.getWidgets()) {
            whole &=
                    face.draw(
                            widget,
                            new FieldFace.Content(
                                    shown.kind() == FieldFace.Kind.COMB
                                            ? shown.value()
                                            : shown.text(),
                                    shown.kind(),
                                    shown.cells(),
                                    TextLook.of(field, widget)));
        }
        String name = field.getFullyQualifiedName();
        if (!whole) {
            findings.add(tooLong(name, shown, place));
        } else if (!shown.text().isEmpty()) {
            written.add(new Written(shown.text(), "field \"" + name + "\"", place));
        }
    }

    private static Finding tooLong(String name, Shown shown, Place place) {
        String room =
                shown.cells() > 0
                        ? "holds at most " + shown.cells() + " letters"
                        : "is too small for the text even at 6 points";
        return Finding.of(
                        FindingCode.FORM_TEXT_TOO_LONG,
                        place,
                        "The field \"" + name + "\" " + room + ".",
                        "Shorten the value in the mapping table or the register, or complete the"
                                + " form by hand.")
                .seeing(shown.value());
    }

    private static Finding unknown(
            PDTerminalField field, String value, List<String> options, Place place) {
        String known =
                options.isEmpty()
                        ? "it is ticked with yes"
                        : "it knows "
                                + options.stream().limit(12).collect(Collectors.joining(", "));
        return Finding.of(
                        FindingCode.FORM_CHOICE_UNKNOWN,
                        place,
                        "The value is none of the choices of the field \""
                                + field.getFullyQualifiedName()
                                + "\"; "
                                + known
                                + ".",
                        "Write one of the choices in the mapping table.")
                .seeing(value);
    }
}
