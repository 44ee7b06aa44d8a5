package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import paperbark.batch.Ending;
import paperbark.batch.OutputFolder;
import paperbark.batch.Trouble;
import paperbark.fault.FaultPoint;
import paperbark.ledger.Batches;
import paperbark.ledger.Ledger;
import paperbark.ledger.Proof;

/** Attends an office folder: takes each register to its end, one after another. */
public final class Attendant {
    private final Office office;
    private final World world;
    private final Intake intake;
    private final Intake scans;
    private final Handling handling;
    private final OfficePapers papers;
    private final ScanDesk desk;
    private final StatusPage page;
    private final Opening opening;
    private boolean recovered;
    private Map<Path, String> waiting = Map.of();

    /**
     * What the attendant sees of the world.
     *
     * @param now the moment, for people and for how long a file stayed the same
     * @param today the day of the run
     * @param quiet how long a file must stay the same before it is taken
     * @param copyDays for how many days a copy of the ledger is kept
     * @param version version of the program
     * @param tell takes a line for people
     */
    public record World(
            Supplier<Instant> now,
            Supplier<LocalDate> today,
            Duration quiet,
            int copyDays,
            String version,
            Consumer<String> tell) {}

    /** An attendant of the folder that it has the lock of. */
    public Attendant(OfficeLock lock, World world) {
        this.office = lock.office();
        this.world = world;
        this.intake = new Intake(office.intake(), world.quiet());
        this.scans = new Intake(office.scans(), world.quiet());
        this.page = new StatusPage(office, world);
        Proof proof = new Proof();
        this.opening = new Opening(office, world, proof);
        this.handling = new Handling(office, world, proof, page::progress);
        this.desk = new ScanDesk(office, world);
        this.papers = new OfficePapers(office);
    }

    /**
     * What came of a round.
     *
     * @param endings how each register ended
     * @param waiting the files that wait in the intake by name, with the reason
     */
    public record Round(List<Ending> endings, SortedMap<String, String> waiting) {
        /** Whether a reason to wait is over by itself in nearly all cases. */
        public static boolean isPassing(String reason) {
            return reason.equals(Intake.JUST_COME);
        }
    }

    /**
     * Finishes what was begun, then takes every register that is ready. What goes wrong with one
     * register alone does not keep the others waiting. After a round that failed the next one
     * finishes what was begun, as a new start would.
     *
     * @throws IOException when a folder cannot be read or written; the register is back in the
     *     intake then
     * @throws paperbark.ledger.LedgerBusyException when another program writes in the ledger;
     *     likewise
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted; likewise
     */
    public Round round() throws IOException {
        try {
            if (!Files.isDirectory(office.intake())) {
                // A share that is not there would else be taken for a lost ledger.
                throw new NoSuchFileException(office.intake().toString());
            }
            return attend();
        } catch (IOException | RuntimeException | Error e) {
            recovered = false;
            show(e);
            throw e;
        }
    }

    private Round attend() throws IOException {
        List<Ending> endings = new ArrayList<>();
        List<Exception> failures = new ArrayList<>();
        LocalDate today = world.today().get();
        if (!recovered || opening.isDue(today)) {
            recover(today, endings, failures);
        }
        Intake.Look look = intake.look(world.now().get());
        waiting = look.waiting();
        for (Path file : look.ready()) {
            write(Optional.of(file.getFileName()), true);
            alone(file, failures, () -> take(file).ifPresent(endings::add));
        }
        Intake.Look piles =
                Files.isDirectory(office.scans())
                        ? scans.look(world.now().get())
                        : new Intake.Look(List.of(), Map.of());
        for (Path file : piles.ready()) {
            write(Optional.of(file.getFileName()), true);
            alone(file, failures, () -> takeScan(file).ifPresent(endings::add));
        }
        // The program put it there whole, so nothing has to be waited for.
        for (Path file : Office.list(office.intake())) {
            if (SheetDesk.isAnswers(file)) {
                alone(file, failures, () -> take(file).ifPresent(endings::add));
            }
        }
        if (!failures.isEmpty()) {
            fail(failures.get(0));
        }
        write(Optional.empty(), true);
        SortedMap<String, String> names = new TreeMap<>();
        look.waiting().forEach((file, why) -> names.put(file.getFileName().toString(), why));
        piles.waiting().forEach((file, why) -> names.put(file.getFileName().toString(), why));
        return new Round(List.copyOf(endings), Collections.unmodifiableSortedMap(names));
    }

    private void recover(LocalDate today, List<Ending> endings, List<Exception> failures)
            throws IOException {
        FaultPoint.LOCKED.reach();
        opening.open(today);
        for (WorkItem item : left()) {
            Path file = item.source().orElse(item.folder());
            if (item.source().isPresent()) {
                write(Optional.of(file.getFileName()), true);
            }
            alone(file, failures, () -> resume(item).ifPresent(endings::add));
        }
        noteFiled();
        recovered = failures.isEmpty();
    }

    private Optional<Ending> resume(WorkItem item) throws IOException {
        return item.isScan() ? desk.resume(item).map(this::told) : handling.resume(item);
    }

    private Optional<Ending> takeScan(Path file) throws IOException {
        try {
            return Optional.of(told(desk.take(file)));
        } catch (NoSuchFileException e) {
            if (Files.exists(file)) {
                throw e;
            }
            // Its owner took it back in this moment.
            recovered = false;
            return Optional.empty();
        }
    }

    private Ending told(ScanDesk.Result result) {
        world.tell().accept(result.said());
        return result.ending();
    }

    private Optional<Ending> take(Path file) throws IOException {
        WorkItem item;
        try {
            item = WorkItem.take(office, file);
        } catch (NoSuchFileException e) {
            if (Files.exists(file)) {
                throw e;
            }
            // Its owner took it back in this moment.
            recovered = false;
            return Optional.empty();
        }
        return Optional.of(handling.work(item));
    }

    /**
     * Says on the status page that nobody attends the folder from now on.
     *
     * @throws IOException when it cannot be written
     */
    public void leave() throws IOException {
        write(Optional.empty(), false);
    }

    private interface Step {
        void run() throws IOException;
    }

    /** Keeps a failure for later when it is of one register alone. */
    private static void alone(Path file, List<Exception> failures, Step step) throws IOException {
        try {
            step.run();
        } catch (IOException | RuntimeException e) {
            if (Trouble.of(e).isPresent() && !Trouble.isAbout(e, file)) {
                throw e;
            }
            failures.add(e);
        }
    }

    private static void fail(Exception failure) throws IOException {
        if (failure instanceof IOException io) {
            throw io;
        }
        throw (RuntimeException) failure;
    }

    private void write(Optional<Path> working, boolean attended) throws IOException {
        List<String> there =
                Office.list(office.intake()).stream().map(f -> f.getFileName().toString()).toList();
        if (working.isEmpty()) {
            papers.refresh(world.today().get(), world.now().get(), world.version())
                    .ifPresent(page::knows);
        }
        List<String> all =
                Stream.concat(opening.looks().stream(), papers.looks().stream()).toList();
        page.write(
                new StatusPage.State(
                        waiting, working, handling.troubles(there), all, true, attended));
    }

    private void show(Throwable failure) {
        String said =
                Trouble.of(failure)
                        .map(Trouble::said)
                        .orElse("The program failed; its messages say where. Please report them.");
        try {
            page.write(
                    new StatusPage.State(
                            waiting,
                            Optional.empty(),
                            List.of(said),
                            opening.looks(),
                            false,
                            true));
        } catch (IOException | RuntimeException again) {
            // The same trouble; whoever started the program is told of it.
            failure.addSuppressed(again);
        }
    }

    /** A run may have been cut between moving a register and noting it. */
    private void noteFiled() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            for (Batches.BatchState batch :
                    ledger.batches().unfiled(OutputFolder.id(office.packs()))) {
                if (Office.list(office.filed()).stream()
                        .anyMatch(year -> Files.isDirectory(year.resolve(batch.name())))) {
                    ledger.batches().noteFiled(batch.name());
                }
            }
        }
    }

    private List<WorkItem> left() throws IOException {
        try (Stream<Path> folders = Files.list(office.work())) {
            return folders.filter(Files::isDirectory)
                    .filter(f -> !Office.isHidden(f))
                    .sorted()
                    .map(WorkItem::new)
                    .toList();
        }
    }
}
