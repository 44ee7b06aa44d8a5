package paperbark.output.paper;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.output.CaseFile;
import paperbark.output.PrintableText;
import paperbark.output.TemplateModel;
import paperbark.output.Typeface;

/** The sheet in front of a crew's papers of a day: where to go, whom to ring, what to bring. */
public final class RunSheet {
    private static final String MARGINS =
            "\n@page { margin: 14mm 14mm 16mm 18mm; @top-left { content: none; }"
                    + " @bottom-left { content: 'Run sheet: page ' counter(page) ' of '"
                    + " counter(pages); font-family: 'Liberation Sans'; font-size: 8.5pt; } }";

    private RunSheet() {}

    /**
     * The sheet as a PDF.
     *
     * @param folder the firm's templates, whose style it follows; a template there that is broken
     *     gives way to the shipped one
     * @param title whose day it is, e.g. {@code Crew Heron, 24 Nov 2026}
     * @param jobs in the order of the route, at least one
     */
    public static byte[] of(Optional<Path> folder, String title, List<CaseFile> jobs) {
        Map<String, Object> model = new LinkedHashMap<>();
        model.put("title", title);
        model.put("batch", TemplateModel.of(jobs.get(0).batch()));
        model.put("firm", TemplateModel.of(jobs.get(0).firm()));
        model.put("stops", jobs.stream().map(TemplateModel::of).toList());
        return OwnPage.of(
                folder,
                "run-sheet.ftlh",
                new PrintableText(Typeface.shared()).clean(model),
                MARGINS,
                Imprint.of(jobs.get(0), "Run sheet: " + title, Conformance.BOTH));
    }
}
