package paperbark.output.paper;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import paperbark.output.BatchInfo;
import paperbark.output.PrintableText;
import paperbark.output.TemplateModel;
import paperbark.output.Typeface;
import paperbark.output.WeekView;

/** The printed sheet of an office's week. */
public final class WeekSheet {
    private static final String MARGINS =
            "\n@page { margin: 14mm 14mm 16mm 18mm; @top-left { content: none; }"
                    + " @bottom-left { content: 'Week: page ' counter(page) ' of '"
                    + " counter(pages); font-family: 'Liberation Sans'; font-size: 8.5pt; } }"
                    + " .week table { width: 100%; border-collapse: collapse; }"
                    + " .week td, .week th { text-align: left; vertical-align: top;"
                    + " padding: 1mm 3mm 1mm 0; border-bottom: 0.3pt solid #999; font-weight: normal; }"
                    + " .week table + p { margin-top: 1.5mm; }"
                    + " .week li { margin: 0 0 1mm 0; } .week h2 { page-break-after: avoid; }";

    private WeekSheet() {}

    /**
     * The sheet as a PDF.
     *
     * @param folder the firm's templates, whose style it follows
     * @param today the day
     */
    public static byte[] of(Optional<Path> folder, WeekView view, LocalDate today) {
        Map<String, Object> model = TemplateModel.of(view);
        return OwnPage.of(
                folder,
                "week-sheet.ftlh",
                new PrintableText(Typeface.shared()).clean(model),
                MARGINS,
                new Imprint(
                        "The week of " + view.week(),
                        view.firm(),
                        new BatchInfo("week", "", today, view.program()),
                        Conformance.BOTH));
    }
}
