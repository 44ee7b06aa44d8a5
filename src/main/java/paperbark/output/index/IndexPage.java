package paperbark.output.index;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.codec.binary.Base64;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.output.BatchView;
import paperbark.output.BrokenTemplate;
import paperbark.output.RunFile;
import paperbark.output.RunLimit;
import paperbark.output.TemplateEngine;
import paperbark.output.TemplateModel;

/** The index page of a batch: one HTML file that needs nothing else. */
public final class IndexPage {
    private static final String TEMPLATE = "index.ftlh";
    private static final String SCRIPT = "index.js";

    private IndexPage() {}

    /**
     * Files of single jobs beside their packs.
     *
     * @param typing pages to type from, by the name of the job's pack
     * @param fillable the site sheet to fill in on a tablet, likewise
     */
    public record Beside(
            Map<String, List<IndexView.Workbook>> typing, Map<String, String> fillable) {}

    /**
     * The page, by the shipped template.
     *
     * @param runs what there is to print
     * @param workbooks the workbooks and tables that are there
     * @param beside what lies beside the packs of some jobs
     */
    public static String of(
            BatchView view, List<RunFile> runs, List<IndexView.Workbook> workbooks, Beside beside) {
        try {
            TemplateEngine engine = new TemplateEngine(Optional.empty(), RunLimit.OWN_PAGE);
            Map<String, Object> model =
                    new HashMap<>(
                            TemplateModel.of(
                                    new IndexReader(view, runs, workbooks, beside).read()));
            model.put("scriptHash", hash(engine.text(SCRIPT).orElseThrow()));
            return engine.render(TEMPLATE, model);
        } catch (BrokenTemplate e) {
            throw new IllegalStateException("the shipped index page is broken", e);
        }
    }

    /**
     * The page's policy lets no script run but the one with this print.
     *
     * <p>Source: Content Security Policy Level 3, 2.3.1, hash-source.
     */
    static String hash(String script) {
        return "sha256-" + Base64.encodeBase64String(DigestUtils.sha256(script));
    }
}
