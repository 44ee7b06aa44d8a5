package paperbark.output.index;

import java.util.Optional;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;
import paperbark.output.WeekView;

/** The page of an office's week: one HTML file that needs nothing else. */
public final class WeekPage {
    private WeekPage() {}

    /** The page, by the shipped template. */
    public static String of(WeekView view) {
        try {
            return new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE)
                    .render("week.ftlh", TemplateModel.of(view));
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped page of the week is broken", e);
        }
    }
}
