package paperbark.output.form;

import java.util.ArrayList;
import java.util.List;
import paperbark.finding.Finding;

/**
 * A form that was looked at and is fit to be filled, with what its mapping table says. The look is
 * the same for every job, so it is taken once.
 *
 * @param form the form
 * @param mapping what goes where
 * @param noticed a check for each row of the table that cannot be used
 */
record ReadyForm(FormFile form, Mapping mapping, List<Finding> noticed) {

    /** Keeps the list from being changed. */
    ReadyForm {
        noticed = List.copyOf(noticed);
    }

    /**
     * Looks at a form and its table.
     *
     * @throws UnusableForm when one of them cannot be used
     */
    static ReadyForm of(FormFile form) throws UnusableForm {
        if (form.unread().isPresent()) {
            throw UnusableForm.because(
                    form.pdfName(),
                    form.unread().get(),
                    "Put the form itself there, saved anew in its usual size.");
        }
        List<Finding> noticed = new ArrayList<>();
        Mapping mapping = MappingReader.read(form, noticed);
        try (OpenedForm opened = OpenedForm.of(form.pdfName(), form.pdf())) {
            if (!mapping.fields().isEmpty() && opened.fields().isEmpty()) {
                throw UnusableForm.because(
                        form.pdfName(),
                        "The form has no fields, and its mapping table names some.",
                        "Give the table the columns page, x_mm, y_mm and value; see the command"
                                + " form-grid.");
            }
        }
        return new ReadyForm(form, mapping, noticed);
    }
}
