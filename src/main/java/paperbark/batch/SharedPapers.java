package paperbark.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import paperbark.disk.Staging;
import paperbark.finding.Finding;
import paperbark.output.BatchView;
import paperbark.output.RunFile;
import paperbark.output.form.Entries;
import paperbark.output.index.IndexPage;
import paperbark.output.index.IndexView;
import paperbark.output.index.PapersPage;
import paperbark.output.journal.Journal;
import paperbark.output.paper.FiledPack;
import paperbark.output.workbook.CsvSheets;
import paperbark.output.workbook.SummaryWorkbook;

/**
 * What shows all jobs of a batch together: print run, marked-up register, tables, workbook, index.
 * Each is told what was noticed of those before it, so that it tells of one that could not be made.
 * Since that is hardly ever anything, they are begun side by side as if it was nothing.
 */
final class SharedPapers {
    private static final String MARKED = "register-checked.xlsx";
    private static final String SUMMARY = "summary.xlsx";
    private static final String INDEX = "index.html";

    private static final List<IndexView.Workbook> WORKBOOKS =
            List.of(
                    new IndexView.Workbook(SUMMARY, "Summary (workbook)"),
                    new IndexView.Workbook(MARKED, "Register with findings marked"),
                    new IndexView.Workbook(AnswerBook.NAME, "Still missing, to be filled in"),
                    new IndexView.Workbook(NamesToAdd.NAME, "Names to add to the tables"));

    // Where it lies as seen from a batch in an office folder; it is made anew, a batch never is.
    private static final IndexView.Workbook PAPERS =
            new IndexView.Workbook("../../" + PapersPage.FILE, "How each paper stands now");

    // Far more than a week. Beyond it the gain is small, and two large workbooks would be in
    // memory at a time.
    private static final int MOST_SIDE_BY_SIDE = 2_000;

    private final BatchView view;
    private final Inputs inputs;
    private final Request request;
    private final Staging staging;
    private final SideProducts beside;

    /** Those of a batch that is being written. */
    SharedPapers(BatchView view, Inputs inputs, Request request, Staging staging) {
        this.view = view;
        this.inputs = inputs;
        this.request = request;
        this.staging = staging;
        this.beside = new SideProducts(view.info().register());
    }

    /**
     * Writes the files; gives the view with what was noticed on the way.
     *
     * @param books tell the ledger's last seal, and the sales that are booked anew
     * @param threads how many files are made at a time, at least 1
     */
    BatchView write(List<FiledPack> packs, Books books, int threads) throws IOException {
        try (Workers workers =
                new Workers(view.cases().size() <= MOST_SIDE_BY_SIDE ? threads : 1)) {
            return write(packs, books, workers);
        }
    }

    /**
     * What the index tells of files beside it.
     *
     * @param noticed so far
     * @param runs what there is to print
     * @param workbooks those that could be made, and that this batch needs
     * @param typing pages to type from
     */
    private record Listed(
            List<Finding> noticed,
            List<RunFile> runs,
            List<IndexView.Workbook> workbooks,
            EntryPages.Made typing) {}

    private BatchView write(List<FiledPack> packs, Books books, Workers workers)
            throws IOException {
        Early<Path> pages =
                workers.begin(
                        () ->
                                staging.write(
                                        PageMap.FILE,
                                        PageMap.of(view.info().id(), packs).toJson()));
        Entries entries = new Entries(request.firm().templates());
        Early<EntryPages.Made> typing =
                workers.begin(() -> EntryPages.write(view, entries, staging));
        Early<Boolean> asking = workers.begin(this::ask);
        Guessed<List<Finding>, MarkedCopy> copy = workers.begin(List.of(), this::mark);
        EntryPages.Made likelyTyped = typing.likely(EntryPages.Made.NONE);
        List<Finding> likely = entries.findings();
        Guessed<List<Finding>, Path> summary = workers.begin(likely, this::summary);
        // Behind the long ones: many short ones leave no processor idle at the end.
        PrintRuns runs =
                PrintRuns.begin(new RunOrder(packs), view, request, staging, books.seal(), workers);
        Guessed<Listed, Path> index =
                workers.begin(
                        new Listed(
                                likely,
                                runs.likely(),
                                workbooks(likelyFiles(asking.likely(false)), likelyTyped),
                                likelyTyped),
                        this::index);

        pages.get();
        List<RunFile> printed = runs.end(beside);
        journal(books);
        beside.make(MARKED, () -> copy.with(beside.findings()))
                .ifPresent(made -> beside.note(made.noticed()));
        beside.make(AnswerBook.NAME, asking::get);
        names();
        EntryPages.Made typed =
                beside.make(EntryPages.FOLDER, typing::get).orElse(EntryPages.Made.NONE);
        beside.note(entries.findings());
        recipients();
        if (request.extras().csv()) {
            beside.make("summary-csv", () -> csv(view.with(beside.findings()), staging));
        }
        beside.make(SUMMARY, () -> summary.with(beside.findings()));
        Listed listed =
                new Listed(
                        beside.findings(),
                        printed,
                        workbooks(staging.written().keySet(), typed),
                        typed);
        beside.make(INDEX, () -> index.with(listed));
        return view.with(beside.findings());
    }

    private MarkedCopy mark(List<Finding> noticed) throws IOException {
        MarkedCopy copy = MarkedCopy.of(inputs.copied(), view.with(noticed).findings());
        staging.write(MARKED, copy.content());
        return copy;
    }

    private Path summary(List<Finding> noticed) throws IOException {
        return staging.write(SUMMARY, SummaryWorkbook.of(view.with(noticed)));
    }

    private Path index(Listed listed) throws IOException {
        String page =
                IndexPage.of(
                        view.with(listed.noticed()),
                        listed.runs(),
                        listed.workbooks(),
                        new IndexPage.Beside(listed.typing().pages(), FillableSheets.of(staging)));
        return staging.write(INDEX, page.getBytes(StandardCharsets.UTF_8));
    }

    private void journal(Books books) throws IOException {
        if (!inputs.tables().accounts().isEmpty()) {
            Journal journal =
                    new Journal(view, inputs.tables().accounts(), books.earlierSales(view));
            beside.make("journal.csv", () -> staging.write("journal.csv", journal.csv()));
            beside.make(
                    "accounts.journal",
                    () -> staging.write("accounts.journal", journal.plainText()));
        }
    }

    /** Asks for facts that are missing; whether any is. */
    private boolean ask() throws IOException {
        Optional<byte[]> asking = AnswerBook.asking(view.cases(), request, inputs.tables());
        if (asking.isPresent()) {
            staging.write(AnswerBook.NAME, asking.get());
        }
        return asking.isPresent();
    }

    private void names() throws IOException {
        if (inputs.namesToAdd().isPresent()) {
            NamesToAdd names = inputs.namesToAdd().get();
            beside.make(NamesToAdd.NAME, () -> staging.write(NamesToAdd.NAME, names.workbook()));
        }
    }

    /** Whom letters are for. */
    private void recipients() throws IOException {
        beside.make(
                Recipients.FILE,
                () ->
                        staging.write(
                                Recipients.FILE,
                                Recipients.of(view.info().id(), view.cases()).toJson()));
    }

    /** What of the workbooks will be there unless one cannot be made. */
    private Set<String> likelyFiles(boolean asking) {
        Set<String> files = new HashSet<>(List.of(SUMMARY, MARKED));
        if (asking) {
            files.add(AnswerBook.NAME);
        }
        if (inputs.namesToAdd().isPresent()) {
            files.add(NamesToAdd.NAME);
        }
        return files;
    }

    private List<IndexView.Workbook> workbooks(Set<String> there, EntryPages.Made typed) {
        return Stream.concat(
                        Stream.concat(
                                WORKBOOKS.stream().filter(w -> there.contains(w.file())),
                                typed.tables().stream()),
                        Stream.of(PAPERS).filter(p -> request.extras().officeLinks()))
                .toList();
    }

    private static BatchView csv(BatchView view, Staging staging) throws IOException {
        CsvSheets.write(view, (name, content) -> staging.write("summary-csv/" + name, content));
        return view;
    }
}
