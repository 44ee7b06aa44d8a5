package paperbark.output.form;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDPushButton;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTerminalField;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.output.form.Mapping.FieldRow;
import paperbark.value.Nearest;

/** The fields of a form, and what of a mapping table does not agree with them. */
final class Fields {
    private Fields() {}

    /** The fields by full name, in the order of the form. */
    static Map<String, PDTerminalField> of(PDAcroForm form) {
        Map<String, PDTerminalField> all = new LinkedHashMap<>();
        for (PDField field : form.getFieldTree()) {
            if (field instanceof PDTerminalField found) {
                all.putIfAbsent(String.valueOf(field.getFullyQualifiedName()), found);
            }
        }
        return all;
    }

    /** Whether a value can stand in the field: not in a button or a signature. */
    static boolean holdsValue(PDTerminalField field) {
        return !(field instanceof PDPushButton) && !(field instanceof PDSignatureField);
    }

    /** The finding about a name that is no field. */
    static Finding missing(String name, Collection<String> known, Place place) {
        Optional<String> nearest = Nearest.to(name, known);
        return Finding.of(
                        FindingCode.FORM_FIELD_MISSING,
                        place,
                        "The form has no field of this name that takes a value.",
                        nearest.filter(n -> !n.equals(name))
                                .map(n -> "Write \"" + n + "\" if that is meant.")
                                .orElse(
                                        "Correct the name in the mapping table; the command"
                                                + " form-fields lists all."))
                .seeing(name);
    }

    /** A finding for each field that the form requires and the mapping table does not name. */
    static List<Finding> unmapped(
            FormFile form, Collection<PDTerminalField> fields, Mapping mapping) {
        Set<String> mapped =
                mapping.fields().stream().map(FieldRow::field).collect(Collectors.toSet());
        List<Finding> findings = new ArrayList<>();
        for (PDTerminalField field : fields) {
            String name = field.getFullyQualifiedName();
            if (field.isRequired() && holdsValue(field) && !mapped.contains(name)) {
                findings.add(
                        Finding.of(
                                        FindingCode.FORM_FIELD_UNMAPPED,
                                        new Place.InTemplate(form.pdfName(), 0, 0),
                                        "The form requires the field \""
                                                + name
                                                + "\", and its mapping table has no value for it.",
                                        "Add a row for the field to "
                                                + form.tableName()
                                                + ", or fill it in by hand.")
                                .seeing(name));
            }
        }
        return findings;
    }
}
