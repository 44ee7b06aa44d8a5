package paperbark.output.index;

import java.util.List;
import java.util.Optional;
import paperbark.output.BatchView;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunFile;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** The index page of a batch: one HTML file that needs nothing else. */
public final class IndexPage {
    private static final String TEMPLATE = "index.ftlh";

    private IndexPage() {}

    /**
     * The page, by the shipped template.
     *
     * @param runs what there is to print
     */
    public static String of(BatchView view, List<RunFile> runs) {
        try {
            return new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE)
                    .render(TEMPLATE, TemplateModel.of(new IndexReader(view, runs).read()));
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped index page is broken", e);
        }
    }
}
