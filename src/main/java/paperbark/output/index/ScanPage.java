package paperbark.output.index;

import java.util.Optional;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** The page about a pile of scanned papers: one HTML file that needs nothing else. */
public final class ScanPage {
    private ScanPage() {}

    /** The page, by the shipped template. */
    public static String of(ScanView view) {
        try {
            return new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE)
                    .render("scans.ftlh", TemplateModel.of(view));
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped page of scans is broken", e);
        }
    }
}
