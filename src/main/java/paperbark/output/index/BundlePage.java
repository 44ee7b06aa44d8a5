package paperbark.output.index;

import java.util.Optional;
import paperbark.output.BrokenTemplate;
import paperbark.output.LetterView;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** The page that covers the papers of a claim: one HTML file that needs nothing else. */
public final class BundlePage {
    private BundlePage() {}

    /** The page, by the shipped template. */
    public static String of(LetterView letter) {
        try {
            return new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE)
                    .render("bundle.ftlh", TemplateModel.of(letter));
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped page of a claim's papers is broken", e);
        }
    }
}
