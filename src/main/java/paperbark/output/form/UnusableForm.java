package paperbark.output.form;

import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;

/** A form or mapping table that cannot be used, with the reason and what to do. */
final class UnusableForm extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Finding finding;

    UnusableForm(Finding finding) {
        super(finding.fact());
        this.finding = finding;
    }

    /** A form that cannot be filled. */
    static UnusableForm because(String file, String fact, String remedy) {
        return new UnusableForm(
                Finding.of(
                        FindingCode.FORM_UNUSABLE, new Place.InTemplate(file, 0, 0), fact, remedy));
    }

    /** The finding for the user, about no job yet. */
    Finding finding() {
        return finding;
    }
}
