package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import paperbark.disk.Staging;
import paperbark.job.Visit;
import paperbark.output.BatchView;
import paperbark.output.PrintRunFiles;
import paperbark.output.index.IndexPage;
import paperbark.output.journal.Journal;
import paperbark.output.paper.FiledPack;
import paperbark.output.paper.PrintRun;
import paperbark.output.workbook.CsvSheets;
import paperbark.output.workbook.SummaryWorkbook;

/** What shows all jobs of a batch together. */
final class SharedPapers {
    private SharedPapers() {}

    static void write(
            BatchView view, List<FiledPack> packs, Inputs inputs, Request request, Staging staging)
            throws IOException {
        printRun(inRouteOrder(packs), staging);
        staging.write("index.html", IndexPage.of(view).getBytes(StandardCharsets.UTF_8));
        staging.write("summary.xlsx", SummaryWorkbook.of(view));
        if (!inputs.tables().accounts().isEmpty()) {
            Journal journal = new Journal(view, inputs.tables().accounts());
            staging.write("journal.csv", journal.csv());
            staging.write("accounts.journal", journal.plainText());
        }
        if (request.extras().csv()) {
            CsvSheets.write(view, (name, content) -> staging.write("summary-csv/" + name, content));
        }
        staging.write(
                "register-checked.xlsx",
                MarkedCopy.of(request.register().file(), inputs.names()::knows, view.findings()));
    }

    private static void printRun(List<FiledPack> packs, Staging staging) throws IOException {
        List<String> names = PrintRunFiles.names(packs.size());
        for (int i = 0; i < names.size(); i++) {
            List<FiledPack> part = PrintRunFiles.part(packs, i);
            staging.write(names.get(i), out -> PrintRun.write(part, out));
        }
    }

    /**
     * Crew, then day, then place in the day's route, then job; packs without a crew or place come
     * last.
     */
    private static List<FiledPack> inRouteOrder(List<FiledPack> packs) {
        Comparator<Visit> route =
                Comparator.comparing((Visit v) -> v.crew().orElse("\uffff"))
                        .thenComparing(v -> v.on().orElse(LocalDate.MAX))
                        .thenComparing(v -> v.order().orElse(Integer.MAX_VALUE));
        return packs.stream()
                .sorted(
                        Comparator.comparing((FiledPack p) -> p.caseFile().job().visit(), route)
                                .thenComparing(p -> p.caseFile().job().reference()))
                .toList();
    }
}
