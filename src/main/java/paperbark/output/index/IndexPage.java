package paperbark.output.index;

import java.util.Optional;
import paperbark.output.BatchView;
import paperbark.output.BrokenTemplate;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** The index page of a batch: one HTML file that needs nothing else. */
public final class IndexPage {
    private static final String TEMPLATE = "index.ftlh";

    private IndexPage() {}

    /** The page, by the shipped template. */
    public static String of(BatchView view) {
        try {
            return of(view, new TemplateEngine(Optional.empty()));
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped index page is broken", e);
        }
    }

    /**
     * The page, by the firm's template where there is one.
     *
     * @throws BrokenTemplate when that template cannot be used
     */
    public static String of(BatchView view, TemplateEngine engine) throws BrokenTemplate {
        return engine.render(TEMPLATE, TemplateModel.of(new IndexReader(view).read()));
    }
}
