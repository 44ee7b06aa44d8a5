package paperbark.output.index;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** A page to type from: one HTML file that needs nothing else, and is of use without script. */
public final class TypingPage {
    private final TemplateEngine engine = new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE);

    /** The page, by the shipped template. */
    public String of(TypingView view) {
        try {
            Map<String, Object> model = new HashMap<>(TemplateModel.of(view));
            model.put("scriptHash", IndexPage.hash(engine.text("typing.js").orElseThrow()));
            return engine.render("typing.ftlh", model);
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped page to type from is broken", e);
        }
    }
}
