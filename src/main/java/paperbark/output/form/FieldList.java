package paperbark.output.form;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDButton;
import org.apache.pdfbox.pdmodel.interactive.form.PDChoice;
import org.apache.pdfbox.pdmodel.interactive.form.PDPushButton;
import org.apache.pdfbox.pdmodel.interactive.form.PDRadioButton;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTerminalField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTextField;
import paperbark.output.table.SafeCsv;
import paperbark.sheet.Reading;

/** Lists the fields of a form as a mapping table to start from. */
public final class FieldList {
    private static final String[] HEADINGS = {
        "field", "value", "type", "page", "required", "max_length", "format", "options"
    };

    private FieldList() {}

    /**
     * The table as CSV, with no values yet; for a form without fields the headings of a table of
     * places.
     *
     * @param file name of the form, for findings
     * @param pdf the form
     * @return no result where the form cannot be used
     */
    public static Reading<String> of(String file, byte[] pdf) {
        try (OpenedForm form = OpenedForm.of(file, pdf)) {
            Optional<PDAcroForm> fields = form.fields();
            return Reading.of(
                    fields.isPresent()
                            ? table(form.document(), Fields.of(fields.get()))
                            : "page,x_mm,y_mm,width_mm,align,size,value\n",
                    List.of());
        } catch (UnusableForm e) {
            return Reading.refused(List.of(e.finding()));
        } catch (RuntimeException | StackOverflowError e) {
            return Reading.refused(List.of(OpenedForm.damaged(file).finding()));
        }
    }

    private static String table(PDDocument document, Map<String, PDTerminalField> fields) {
        StringBuilder out = new StringBuilder();
        CSVFormat format =
                CSVFormat.DEFAULT.builder().setHeader(HEADINGS).setRecordSeparator("\n").get();
        try (CSVPrinter printer = new CSVPrinter(out, format)) {
            for (Map.Entry<String, PDTerminalField> entry : fields.entrySet()) {
                PDTerminalField field = entry.getValue();
                printer.printRecord(
                        SafeCsv.text(entry.getKey()),
                        "",
                        type(field),
                        pages(document, field),
                        field.isRequired() ? "yes" : "",
                        field instanceof PDTextField text && text.getMaxLen() > 0
                                ? text.getMaxLen()
                                : "",
                        SafeCsv.text(DateForm.of(field).orElse("")),
                        SafeCsv.text(String.join("; ", options(field))));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private static String type(PDTerminalField field) {
        if (field instanceof PDTextField text) {
            return text.isMultiline() ? "lines of text" : text.isComb() ? "comb" : "text";
        }
        if (field instanceof PDChoice choice) {
            return choice.isCombo() ? "choice" : "list";
        }
        if (field instanceof PDSignatureField) {
            return "signature";
        }
        if (field instanceof PDPushButton) {
            return "button";
        }
        return field instanceof PDRadioButton ? "radio group" : "tick box";
    }

    private static List<String> options(PDTerminalField field) {
        if (field instanceof PDChoice choice) {
            return Choices.of(choice).stream().map(Choices.Choice::shown).toList();
        }
        if (field instanceof PDButton button && !(field instanceof PDPushButton)) {
            List<String> options = Ticks.options(button);
            return options.size() > 1 || field instanceof PDRadioButton
                    ? options
                    : List.of("yes", "no");
        }
        return List.of();
    }

    private static String pages(PDDocument document, PDTerminalField field) {
        List<Integer> pages = new ArrayList<>();
        for (PDAnnotationWidget widget : field.getWidgets()) {
            int page = page(document, widget);
            if (page > 0 && !pages.contains(page)) {
                pages.add(page);
            }
        }
        return pages.stream().map(String::valueOf).collect(Collectors.joining(" "));
    }

    /** The form may not say on which page a field lies, so the pages are asked. */
    private static int page(PDDocument document, PDAnnotationWidget widget) {
        int number = 0;
        try {
            for (PDPage page : document.getPages()) {
                number++;
                if (page.getAnnotations().stream()
                        .anyMatch(a -> a.getCOSObject() == widget.getCOSObject())) {
                    return number;
                }
            }
        } catch (IOException e) {
            return 0;
        }
        return 0;
    }
}
