package paperbark.output.index;

import java.util.Optional;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** The page of an office folder: one HTML file that needs nothing else. */
public final class OfficePage {
    private OfficePage() {}

    /** The page, by the shipped template. */
    public static String of(OfficeView view) {
        try {
            return new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE)
                    .render("status.ftlh", TemplateModel.of(view));
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped status page is broken", e);
        }
    }
}
