package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Predicate;
import paperbark.disk.Staging;
import paperbark.output.BatchView;
import paperbark.output.PrintRunFiles;
import paperbark.output.index.IndexPage;
import paperbark.output.paper.FiledPack;
import paperbark.output.paper.PrintRun;
import paperbark.output.workbook.CsvSheets;
import paperbark.output.workbook.SummaryWorkbook;

/**
 * Writes what lies beside the packs: print run, marked-up register, tables, workbook, index. In
 * this order, so that the later ones tell of an earlier one that is missing.
 */
final class SideFiles {
    private final Request request;
    private final Staging staging;

    SideFiles(Request request, Staging staging) {
        this.request = request;
        this.staging = staging;
    }

    /**
     * Writes the files.
     *
     * @param inRouteOrder the packs as they are printed
     * @param knownHeading tells what is a heading of a register
     * @return the view with what was noticed on the way
     */
    BatchView write(BatchView view, List<FiledPack> inRouteOrder, Predicate<String> knownHeading)
            throws IOException {
        SideProducts beside = new SideProducts(view.info().register());
        writePrintRun(inRouteOrder, beside);
        beside.make(
                "register-checked.xlsx",
                () -> {
                    MarkedCopy copy =
                            MarkedCopy.of(
                                    request.register(),
                                    request.sheet(),
                                    knownHeading,
                                    view.with(beside.findings()).findings());
                    beside.note(copy.noticed());
                    return staging.write("register-checked.xlsx", copy.content());
                });
        if (request.csv()) {
            beside.make("summary-csv", () -> csv(view.with(beside.findings())));
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

    private void writePrintRun(List<FiledPack> packs, SideProducts beside) throws IOException {
        List<String> names = PrintRunFiles.names(packs.size());
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            List<FiledPack> part = PrintRunFiles.part(packs, i);
            beside.make(name, () -> staging.write(name, out -> PrintRun.write(part, out)));
        }
    }

    private int csv(BatchView view) throws IOException {
        int before = staging.written().size();
        CsvSheets.write(view, (name, content) -> staging.write("summary-csv/" + name, content));
        return staging.written().size() - before;
    }
}
