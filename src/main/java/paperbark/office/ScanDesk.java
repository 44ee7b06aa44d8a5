package paperbark.office;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.batch.AdviceFiles;
import paperbark.batch.Ending;
import paperbark.batch.Trouble;
import paperbark.disk.Disk;
import paperbark.disk.Hashes;
import paperbark.disk.Rights;
import paperbark.fault.FaultPoint;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.Severity;
import paperbark.ledger.Ledger;
import paperbark.ledger.ScanBook;
import paperbark.ledger.ScanEntry;
import paperbark.scan.FilledForm;
import paperbark.scan.UnreadablePile;

/**
 * Takes one pile of scanned pages to its end: sorted and filed, or given back. What is to appear is
 * made beside the pile first; the ledger's commit decides; then each file goes to its place by one
 * rename, and whatever is cut short on the way is finished by the next start.
 */
final class ScanDesk {
    private static final String PLAN = "plan.json";
    private static final String SORTED = "sorted";

    /** Where piles and filled-in sheets stay, below a year of what is filed. */
    static final String FILED = "scans";

    private static final ObjectMapper JSON = new ObjectMapper();

    private final Office office;
    private final Attendant.World world;

    ScanDesk(Office office, Attendant.World world) {
        this.office = office;
        this.world = world;
    }

    /**
     * What came of a pile.
     *
     * @param file its name
     * @param ending how it ended
     * @param said what to tell people, one line
     * @param findings what they should look at
     */
    record Result(String file, Ending ending, String said, List<Finding> findings) {}

    /** What the ledger is to take in, once everything is made. */
    private record Plan(long timesBefore, String said, boolean asks) {}

    /** Takes a pile, or gives nothing where its owner took it back. */
    Result take(Path file) throws IOException {
        return work(WorkItem.takeScan(office, file));
    }

    /** Goes on with what an earlier run left behind. */
    Optional<Result> resume(WorkItem item) throws IOException {
        if (Returned.finish(office, item)) {
            return Optional.empty();
        }
        Optional<Path> source = item.source();
        if (source.isEmpty()) {
            Disk.delete(item.folder());
            return Optional.empty();
        }
        Optional<Plan> plan = committed(item, source.get());
        if (plan.isPresent()) {
            return Optional.of(publish(item, plan.get(), List.of()));
        }
        return Optional.of(work(item));
    }

    private Optional<Plan> committed(WorkItem item, Path source) throws IOException {
        Path file = item.folder().resolve(PLAN);
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        Plan plan = JSON.readValue(Files.readAllBytes(file), Plan.class);
        try (Ledger ledger = Ledger.open(office.ledger())) {
            boolean entered =
                    new ScanBook(ledger).times(Hashes.sha256(source)) > plan.timesBefore();
            return entered ? Optional.of(plan) : Optional.empty();
        }
    }

    private Result work(WorkItem item) throws IOException {
        if (item.faults() >= Handling.MOST_FAULTS) {
            String name = item.source().orElseThrow().getFileName().toString();
            Returned.unread(office, item, world.today().get());
            return new Result(name, Ending.REFUSED, name + ": See returned/.", List.of());
        }
        try {
            Path source = item.source().orElseThrow();
            Optional<FilledForm> form = FilledForm.of(source);
            return form.isPresent() ? typed(item, source, form.get()) : sort(item);
        } catch (UnreadablePile unreadable) {
            return giveBack(item, unreadable);
        } catch (IOException | RuntimeException | Error e) {
            giveUp(item, e);
            throw e;
        }
    }

    /** What was typed goes into the intake before the sheet is filed, or a cut would lose it. */
    private Result typed(WorkItem item, Path source, FilledForm form) throws IOException {
        String name = source.getFileName().toString();
        SheetDesk desk = new SheetDesk(office);
        if (desk.isFiled(source)) {
            file(item);
            return already(name);
        }
        Optional<Finding> refused = desk.take(source, form);
        if (refused.isPresent()) {
            return giveBack(item, refused.get());
        }
        file(item);
        int facts = form.typed().size();
        String said =
                name
                        + ": "
                        + facts
                        + (facts == 1 ? " fact" : " facts")
                        + " of job "
                        + form.id().job()
                        + " typed on its sheet; watch prepares the job from them.";
        return new Result(name, Ending.DONE, said, List.of());
    }

    private static Result already(String name) {
        return new Result(name, Ending.ALREADY, name + ": It was taken in before.", List.of());
    }

    private void giveUp(WorkItem item, Throwable failure) {
        try {
            if (Trouble.of(failure).isPresent()) {
                item.putBack(office);
            } else {
                item.countFault();
            }
        } catch (IOException | RuntimeException again) {
            failure.addSuppressed(again);
        }
    }

    private Result giveBack(WorkItem item, UnreadablePile unreadable) throws IOException {
        String name = item.source().orElseThrow().getFileName().toString();
        Finding finding =
                Finding.of(
                        FindingCode.SCAN_UNREADABLE,
                        new Place.InFile(name),
                        unreadable.getMessage(),
                        unreadable.remedy());
        return giveBack(item, finding);
    }

    private Result giveBack(WorkItem item, Finding finding) throws IOException {
        String name = item.source().orElseThrow().getFileName().toString();
        Returned.pile(office, item, finding, world.today().get());
        return new Result(
                name,
                Ending.REFUSED,
                name + ": " + finding.fact() + " See returned/.",
                List.of(finding));
    }

    private Result sort(WorkItem item) throws IOException {
        Path source = item.source().orElseThrow();
        String name = source.getFileName().toString();
        String sha256 = Hashes.sha256(source);
        Disk.delete(item.folder().resolve(SORTED));
        try (Ledger ledger = Ledger.open(office.ledger())) {
            ScanBook book = new ScanBook(ledger);
            long before = book.times(sha256);
            if (before > 0) {
                file(item);
                return already(name);
            }
            SortedPile pile =
                    SortedPile.of(source, office, ledger, item.folder().resolve(SORTED), world);
            Plan plan = new Plan(before, name + ": " + pile.said(), pile.asks());
            Disk.write(item.folder().resolve(PLAN), JSON.writeValueAsBytes(plan));
            Disk.forceAll(item.folder());
            FaultPoint.STAGED.reach();
            book.enter(
                    new ScanEntry(
                            name,
                            sha256,
                            pile.entered(),
                            world.today().get(),
                            world.now().get(),
                            world.version()));
            FaultPoint.COMMITTED.reach();
            AdviceFiles.complete(ledger, AdviceFiles.beside(office.ledger()));
            return publish(item, plan, pile.findings());
        }
    }

    private Result publish(WorkItem item, Plan plan, List<Finding> findings) throws IOException {
        String name = item.source().orElseThrow().getFileName().toString();
        Path sorted = item.folder().resolve(SORTED);
        for (Path file : files(sorted)) {
            Path place = office.signed().resolve(sorted.relativize(file).toString());
            Disk.moveOver(file, place);
            Rights.ofFolderAroundIfOwn(place);
            FaultPoint.PLACED.reach();
        }
        file(item);
        return new Result(name, plan.asks() ? Ending.HELD : Ending.DONE, plan.said(), findings);
    }

    private static List<Path> files(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }

    /** The pile stays as it came, to the byte. */
    private void file(WorkItem item) throws IOException {
        Path source = item.source().orElseThrow();
        Path folder =
                office.filed()
                        .resolve(String.valueOf(world.today().get().getYear()))
                        .resolve(FILED);
        Disk.makeFolders(folder);
        Disk.force(folder.getParent());
        Disk.force(office.filed());
        Path filed = Office.free(folder, source.getFileName().toString());
        Disk.move(source, filed);
        Rights.ofFolderAroundIfOwn(filed);
        FaultPoint.FILED.reach();
        Disk.delete(item.folder());
    }

    /** Whether somebody has to look. */
    static boolean asks(List<Finding> findings) {
        return findings.stream().anyMatch(f -> f.severity() != Severity.NOTE);
    }
}
