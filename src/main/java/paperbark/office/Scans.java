package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.batch.Ending;
import paperbark.disk.Disk;
import paperbark.finding.Finding;
import paperbark.ledger.Ledger;
import paperbark.ledger.Proof;
import paperbark.scan.PrintedPage;

/** Takes the piles of an office folder at once, and places the pages that nobody could place. */
public final class Scans {
    private final Office office;
    private final Attendant.World world;

    /** For the folder that the lock is of. */
    public Scans(OfficeLock lock, Attendant.World world) {
        this.office = lock.office();
        this.world = world;
    }

    /**
     * What came of it.
     *
     * @param endings how each pile ended
     * @param findings what people should look at
     * @param said what to tell people of each pile, a line each
     */
    public record Result(List<Ending> endings, List<Finding> findings, List<String> said) {
        /** Keeps the lists from being changed. */
        public Result {
            endings = List.copyOf(endings);
            findings = List.copyOf(findings);
            said = List.copyOf(said);
        }
    }

    /**
     * Takes every pile that lies there, and those that were begun.
     *
     * @throws IOException when a folder cannot be read or written; the pile is back then
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted
     */
    public Result take() throws IOException {
        List<String> looks;
        try (Ledger ledger = Ledger.open(office.ledger())) {
            looks = LedgerProof.prove(office, ledger, new Proof(), ProvedFiles.none());
        }
        ScanDesk desk = new ScanDesk(office, world);
        List<ScanDesk.Result> results = new ArrayList<>();
        for (Path folder : Office.list(office.work())) {
            WorkItem item = new WorkItem(folder);
            if (Files.isDirectory(folder) && item.isScan()) {
                desk.resume(item).ifPresent(results::add);
            }
        }
        for (Path file : Office.list(office.scans())) {
            if (Files.isRegularFile(file) && !Intake.isSomebodyElses(file)) {
                results.add(desk.take(file));
            }
        }
        show(looks);
        return new Result(
                results.stream().map(ScanDesk.Result::ending).toList(),
                results.stream().flatMap(r -> r.findings().stream()).toList(),
                results.stream().map(ScanDesk.Result::said).toList());
    }

    /** What the office shows of its papers tells of these too. */
    private void show(List<String> looks) throws IOException {
        OfficePapers papers = new OfficePapers(office);
        StatusPage page = new StatusPage(office, world);
        papers.refresh(world.today().get(), world.now().get(), world.version())
                .ifPresent(page::knows);
        page.write(
                new StatusPage.State(
                        new Intake(office.intake(), world.quiet())
                                .look(world.now().get())
                                .waiting(),
                        Optional.empty(),
                        List.of(),
                        Stream.concat(looks.stream(), papers.looks().stream()).toList(),
                        true,
                        false));
    }

    /**
     * Places a page that lies to be placed, and takes it.
     *
     * @param number its number
     * @param job the job number
     * @param paper name of the paper's kind
     * @param page which page of the paper, from 1
     * @return why it cannot be, in a sentence; empty where it is placed
     * @throws IOException as {@link #take()} does
     */
    public Optional<String> place(int number, String job, String paper, int page)
            throws IOException {
        Path file = office.toPlace().resolve("page-" + number + ".pdf");
        if (!Files.isRegularFile(file)) {
            return Optional.of("There is no page " + number + " in signed/to-place.");
        }
        Optional<PrintedPage> place;
        try (Ledger ledger = Ledger.open(office.ledger())) {
            place = new PrintedPages(ledger, office).newest(job, paper);
        }
        if (place.isEmpty()) {
            return Optional.of("No paper \"" + paper + "\" was printed here for job " + job + ".");
        }
        if (page < 1 || page > place.get().paper().pages()) {
            return Optional.of(
                    "The paper has "
                            + place.get().paper().pages()
                            + " pages, and no page "
                            + page
                            + ".");
        }
        Disk.move(file, Office.free(office.scans(), NamedPages.name(job, paper, page)));
        return Optional.empty();
    }
}
