package paperbark.output.form;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.apache.pdfbox.pdmodel.interactive.form.PDButton;

/** Check boxes and groups of radio buttons, which show one of the pictures that the form brings. */
final class Ticks {
    private static final String OFF = "Off";
    private static final Set<String> YES = Set.of("yes", "true", "x", "on", "1");
    private static final Set<String> NO = Set.of("", "no", "false", "off", "0");

    private Ticks() {}

    /** The states that the boxes of a field can have beside off, in the order of the form. */
    static List<String> states(PDButton field) {
        List<String> states = new ArrayList<>();
        field.getWidgets()
                .forEach(w -> onState(w).filter(s -> !states.contains(s)).ifPresent(states::add));
        return states;
    }

    /** What an admin may write: the export values where the form has them, else the states. */
    static List<String> options(PDButton field) {
        List<String> exported = exported(field);
        return exported.isEmpty() ? states(field) : exported;
    }

    /**
     * Ticks the box that the value means: yes or no for a single box, the name of a state or export
     * value otherwise.
     *
     * @return false when the value means none of the boxes; nothing is changed then
     */
    static boolean set(PDDocument document, PDButton field, String value) throws IOException {
        String said = value.strip().toLowerCase(Locale.ROOT);
        Optional<Integer> meant = meant(field, said);
        if (meant.isEmpty() && !NO.contains(said)) {
            return false;
        }
        List<PDAnnotationWidget> widgets = field.getWidgets();
        String chosen = OFF;
        if (meant.isPresent()) {
            PDAnnotationWidget widget = widgets.get(meant.get());
            if (onState(widget).isEmpty()) {
                drawCross(document, widget);
            }
            chosen = onState(widget).orElse(OFF);
        }
        boolean byPlace = !exported(field).isEmpty();
        for (int i = 0; i < widgets.size(); i++) {
            boolean own = onState(widgets.get(i)).filter(chosen::equals).isPresent();
            boolean on = own && (!byPlace || meant.filter(Integer.valueOf(i)::equals).isPresent());
            widgets.get(i).setAppearanceState(on ? chosen : OFF);
        }
        field.getCOSObject().setName(COSName.V, chosen);
        return true;
    }

    /** The place of the widget that a value means. */
    private static Optional<Integer> meant(PDButton field, String said) {
        List<String> exported = exported(field);
        List<PDAnnotationWidget> widgets = field.getWidgets();
        for (int i = 0; i < widgets.size(); i++) {
            boolean byExport = i < exported.size() && exported.get(i).equalsIgnoreCase(said);
            boolean byState = onState(widgets.get(i)).filter(said::equalsIgnoreCase).isPresent();
            if (byExport || (exported.isEmpty() && byState)) {
                return Optional.of(i);
            }
        }
        boolean single = states(field).size() <= 1 && exported.size() <= 1 && !widgets.isEmpty();
        return single && YES.contains(said) ? Optional.of(0) : Optional.empty();
    }

    private static Optional<String> onState(PDAnnotationWidget widget) {
        COSDictionary pictures = widget.getCOSObject().getCOSDictionary(COSName.AP);
        COSDictionary normal = pictures == null ? null : pictures.getCOSDictionary(COSName.N);
        return normal == null
                ? Optional.empty()
                : normal.keySet().stream()
                        .map(COSName::getName)
                        .filter(name -> !name.equals(OFF))
                        .findFirst();
    }

    /** Not the library's list, which takes a text for a list of one. */
    private static List<String> exported(PDButton field) {
        COSArray names = field.getCOSObject().getCOSArray(COSName.OPT);
        List<String> exported = new ArrayList<>();
        for (int i = 0; names != null && i < names.size(); i++) {
            exported.add(names.getObject(i) instanceof COSString text ? text.getString() : "");
        }
        return exported;
    }

    /** For a form that leaves the drawing to the viewer. */
    private static void drawCross(PDDocument document, PDAnnotationWidget widget)
            throws IOException {
        PDRectangle place = widget.getRectangle();
        float side = Math.min(place.getWidth(), place.getHeight());
        PDAppearanceStream cross = new PDAppearanceStream(document);
        cross.setBBox(new PDRectangle(place.getWidth(), place.getHeight()));
        try (OutputStream out = cross.getStream().createOutputStream(COSName.FLATE_DECODE);
                PDPageContentStream canvas = new PDPageContentStream(document, cross, out)) {
            float x = (place.getWidth() - side) / 2;
            float y = (place.getHeight() - side) / 2;
            canvas.setLineWidth(Math.max(0.8f, side / 10));
            canvas.moveTo(x + side * 0.2f, y + side * 0.2f);
            canvas.lineTo(x + side * 0.8f, y + side * 0.8f);
            canvas.moveTo(x + side * 0.2f, y + side * 0.8f);
            canvas.lineTo(x + side * 0.8f, y + side * 0.2f);
            canvas.stroke();
        }
        COSDictionary states = new COSDictionary();
        states.setItem(COSName.getPDFName("Yes"), cross);
        COSDictionary pictures = new COSDictionary();
        pictures.setItem(COSName.N, states);
        widget.getCOSObject().setItem(COSName.AP, pictures);
    }
}
