package paperbark.output.index;

import java.util.Optional;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** The page of an office's papers: one HTML file that needs nothing else. */
public final class PapersPage {
    /** Its name in an office folder. */
    public static final String FILE = "papers.html";

    private PapersPage() {}

    /** The page, by the shipped template. */
    public static String of(PapersView view) {
        try {
            return new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE)
                    .render("papers.ftlh", TemplateModel.of(view));
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped page of papers is broken", e);
        }
    }
}
