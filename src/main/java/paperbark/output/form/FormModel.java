package paperbark.output.form;

import java.util.Map;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.offer.Expected;
import paperbark.output.BrokenTemplate;
import paperbark.output.CaseFile;
import paperbark.output.Paper;
import paperbark.output.PrintableText;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;
import paperbark.output.Typeface;
import paperbark.value.SchemeName;

/**
 * What the values of a mapping table may ask for: the facts that templates see, and for the scheme
 * of the paper {@code claim} (its certificates), {@code buyer} and {@code taken} (the offer taken
 * and the money expected).
 */
final class FormModel {
    private final TemplateEngine engine;
    private final PrintableText printable = new PrintableText(Typeface.shared());
    private final Map<String, Object> facts;

    FormModel(TemplateEngine engine, CaseFile caseFile, Paper paper) {
        this.engine = engine;
        facts = printable.clean(facts(caseFile, paper));
    }

    /** What can be asked for, as it is. */
    static Map<String, Object> facts(CaseFile caseFile, Paper paper) {
        Map<String, Object> all = TemplateModel.of(caseFile);
        TemplateModel.put(all, "paper", paper);
        Optional<SchemeName> scheme = paper.kind().scheme();
        Optional<Expected> taken = scheme.flatMap(caseFile::expected);
        TemplateModel.put(all, "claim", scheme.flatMap(caseFile.entitlements()::of));
        TemplateModel.put(all, "taken", taken);
        TemplateModel.put(
                all,
                "buyer",
                taken.map(Expected::buyer)
                        .or(() -> scheme.flatMap(s -> caseFile.job().claim(s).buyer())));
        return all;
    }

    /**
     * What stands in a field; empty where the job lacks a fact that the value asks for.
     *
     * @param place the row of the mapping table
     * @param value in the language of templates
     * @throws UnusableForm when the value is malformed, forbidden or asks for a fact that no job
     *     has
     */
    String value(Place.InRule place, String value) throws UnusableForm {
        try {
            return engine.renderText(place.file(), value, facts)
                    .map(printable::clean)
                    .map(String::strip)
                    .orElse("");
        } catch (BrokenTemplate e) {
            throw new UnusableForm(
                    Finding.of(
                                    FindingCode.TEMPLATE_BROKEN,
                                    place,
                                    e.getMessage(),
                                    "Mend the value in the mapping table.")
                            .seeing(value));
        }
    }
}
