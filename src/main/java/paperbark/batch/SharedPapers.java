package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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

/**
 * What shows all jobs of a batch together: print run, marked-up register, tables, workbook, index.
 * In this order, so that the later ones tell of an earlier one that could not be made.
 */
final class SharedPapers {
    private SharedPapers() {}

    /**
     * Writes the files; gives the view with what was noticed on the way.
     *
     * @param seal the ledger's last, for the first page of a print run
     */
    static BatchView write(
            BatchView view,
            List<FiledPack> packs,
            Inputs inputs,
            Request request,
            Staging staging,
            Optional<String> seal)
            throws IOException {
        SideProducts beside = new SideProducts(view.info().register());
        printRun(inRouteOrder(packs), seal, staging, beside);
        if (!inputs.tables().accounts().isEmpty()) {
            Journal journal = new Journal(view, inputs.tables().accounts());
            beside.make("journal.csv", () -> staging.write("journal.csv", journal.csv()));
            beside.make(
                    "accounts.journal",
                    () -> staging.write("accounts.journal", journal.plainText()));
        }
        beside.make(
                "register-checked.xlsx",
                () -> {
                    MarkedCopy copy =
                            MarkedCopy.of(
                                    request.register().file(),
                                    request.register().sheet(),
                                    inputs.names()::knows,
                                    view.with(beside.findings()).findings());
                    beside.note(copy.noticed());
                    return staging.write("register-checked.xlsx", copy.content());
                });
        if (request.extras().csv()) {
            beside.make("summary-csv", () -> csv(view.with(beside.findings()), staging));
        }
        beside.make(
                "summary.xlsx",
                () ->
                        staging.write(
                                "summary.xlsx", SummaryWorkbook.of(view.with(beside.findings()))));
        beside.make(
                "index.html",
                () ->
                        staging.write(
                                "index.html",
                                IndexPage.of(view.with(beside.findings()))
                                        .getBytes(StandardCharsets.UTF_8)));
        return view.with(beside.findings());
    }

    private static void printRun(
            List<FiledPack> packs, Optional<String> seal, Staging staging, SideProducts beside)
            throws IOException {
        List<String> names = PrintRunFiles.names(packs.size());
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            List<FiledPack> part = PrintRunFiles.part(packs, i);
            beside.make(name, () -> staging.write(name, out -> PrintRun.write(part, seal, out)));
        }
    }

    private static BatchView csv(BatchView view, Staging staging) throws IOException {
        CsvSheets.write(view, (name, content) -> staging.write("summary-csv/" + name, content));
        return view;
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
