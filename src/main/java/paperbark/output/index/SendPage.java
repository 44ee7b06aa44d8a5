package paperbark.output.index;

import java.util.Optional;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** The page that lists the drafts of an office: one HTML file that needs nothing else. */
public final class SendPage {
    private SendPage() {}

    /** The page, by the shipped template. */
    public static String of(SendView view) {
        try {
            return new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE)
                    .render("send.ftlh", TemplateModel.of(view));
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped page of drafts is broken", e);
        }
    }
}
