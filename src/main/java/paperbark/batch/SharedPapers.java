package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import paperbark.disk.Staging;
import paperbark.output.BatchView;
import paperbark.output.PrintRunFiles;
import paperbark.output.RunFile;
import paperbark.output.form.Entries;
import paperbark.output.index.IndexPage;
import paperbark.output.index.IndexView;
import paperbark.output.index.PapersPage;
import paperbark.output.journal.Journal;
import paperbark.output.paper.FiledPack;
import paperbark.output.paper.PrintRun;
import paperbark.output.paper.RunPack;
import paperbark.output.paper.RunSheet;
import paperbark.output.workbook.CsvSheets;
import paperbark.output.workbook.SummaryWorkbook;

/**
 * What shows all jobs of a batch together: print run, marked-up register, tables, workbook, index.
 * In this order, so that the later ones tell of an earlier one that could not be made.
 */
final class SharedPapers {
    private static final List<IndexView.Workbook> WORKBOOKS =
            List.of(
                    new IndexView.Workbook("summary.xlsx", "Summary (workbook)"),
                    new IndexView.Workbook(
                            "register-checked.xlsx", "Register with findings marked"),
                    new IndexView.Workbook(AnswerBook.NAME, "Still missing, to be filled in"),
                    new IndexView.Workbook(NamesToAdd.NAME, "Names to add to the tables"));

    // Where it lies as seen from a batch in an office folder; it is made anew, a batch never is.
    private static final IndexView.Workbook PAPERS =
            new IndexView.Workbook("../../" + PapersPage.FILE, "How each paper stands now");

    private SharedPapers() {}

    /**
     * Writes the files; gives the view with what was noticed on the way.
     *
     * @param books tell the ledger's last seal, and the sales that are booked anew
     */
    static BatchView write(
            BatchView view,
            List<FiledPack> packs,
            Inputs inputs,
            Request request,
            Staging staging,
            Books books)
            throws IOException {
        SideProducts beside = new SideProducts(view.info().register());
        List<RunFile> runs =
                runs(new RunOrder(packs), view, request, books.seal(), staging, beside);
        if (!inputs.tables().accounts().isEmpty()) {
            Journal journal =
                    new Journal(view, inputs.tables().accounts(), books.earlierSales(view));
            beside.make("journal.csv", () -> staging.write("journal.csv", journal.csv()));
            beside.make(
                    "accounts.journal",
                    () -> staging.write("accounts.journal", journal.plainText()));
        }
        beside.make(
                "register-checked.xlsx",
                () -> {
                    MarkedCopy copy =
                            MarkedCopy.of(inputs.copied(), view.with(beside.findings()).findings());
                    beside.note(copy.noticed());
                    return staging.write("register-checked.xlsx", copy.content());
                });
        forms(view, inputs, request, staging, beside);
        EntryPages.Made typed = outgoing(view, request, staging, beside);
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
                                IndexPage.of(
                                                view.with(beside.findings()),
                                                runs,
                                                workbooks(staging, request, typed),
                                                new IndexPage.Beside(
                                                        typed.pages(), FillableSheets.of(staging)))
                                        .getBytes(StandardCharsets.UTF_8)));
        return view.with(beside.findings());
    }

    /** Those that could be made, and that this batch needs. */
    private static List<IndexView.Workbook> workbooks(
            Staging staging, Request request, EntryPages.Made typed) {
        Set<String> there = staging.written().keySet();
        return Stream.concat(
                        Stream.concat(WORKBOOKS.stream(), typed.tables().stream())
                                .filter(w -> there.contains(w.file())),
                        Stream.of(PAPERS).filter(p -> request.extras().officeLinks()))
                .toList();
    }

    /** What people fill in: facts that are missing, and names that the tables lack. */
    private static void forms(
            BatchView view, Inputs inputs, Request request, Staging staging, SideProducts beside)
            throws IOException {
        Optional<byte[]> asking =
                beside.make(
                                AnswerBook.NAME,
                                () -> AnswerBook.asking(view.cases(), request, inputs.tables()))
                        .flatMap(book -> book);
        if (asking.isPresent()) {
            staging.write(AnswerBook.NAME, asking.get());
        }
        if (inputs.namesToAdd().isPresent()) {
            NamesToAdd names = inputs.namesToAdd().get();
            beside.make(NamesToAdd.NAME, () -> staging.write(NamesToAdd.NAME, names.workbook()));
        }
    }

    /** What leaves the house: entries for makers and buyers, and whom letters are for. */
    private static EntryPages.Made outgoing(
            BatchView view, Request request, Staging staging, SideProducts beside)
            throws IOException {
        Entries entries = new Entries(request.firm().templates());
        EntryPages.Made typed =
                beside.make(EntryPages.FOLDER, () -> EntryPages.write(view, entries, staging))
                        .orElse(EntryPages.Made.NONE);
        beside.note(entries.findings());
        beside.make(
                Recipients.FILE,
                () ->
                        staging.write(
                                Recipients.FILE,
                                Recipients.of(view.info().id(), view.cases()).toJson()));
        return typed;
    }

    /** The print run, and on request one for each crew and day; gives what there is to print. */
    private static List<RunFile> runs(
            RunOrder order,
            BatchView view,
            Request request,
            Optional<String> seal,
            Staging staging,
            SideProducts beside)
            throws IOException {
        List<RunPack> all = order.all();
        List<RunFile> files = new ArrayList<>(PrintRunFiles.of(all.size()));
        for (int i = 0; i < files.size(); i++) {
            String name = files.get(i).file();
            List<RunPack> part = PrintRunFiles.part(all, i);
            beside.make(
                    name,
                    () ->
                            staging.write(
                                    name,
                                    out ->
                                            PrintRun.write(
                                                    part,
                                                    Optional.empty(),
                                                    seal,
                                                    view.info(),
                                                    out)));
        }
        if (request.extras().byCrew()) {
            for (RunOrder.Part part : order.byCrewAndDay()) {
                beside.make(part.file().file(), () -> write(part, view, request, seal, staging))
                        .ifPresent(written -> files.add(part.file()));
            }
        }
        return files;
    }

    private static Path write(
            RunOrder.Part part,
            BatchView view,
            Request request,
            Optional<String> seal,
            Staging staging)
            throws IOException {
        Optional<byte[]> front =
                part.held()
                        ? Optional.empty()
                        : Optional.of(
                                RunSheet.of(request.firm().templates(), part.title(), part.jobs()));
        return staging.write(
                part.file().file(),
                out -> PrintRun.write(part.packs(), front, seal, view.info(), out));
    }

    private static BatchView csv(BatchView view, Staging staging) throws IOException {
        CsvSheets.write(view, (name, content) -> staging.write("summary-csv/" + name, content));
        return view;
    }
}
