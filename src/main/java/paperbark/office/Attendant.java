package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import paperbark.batch.AdviceFiles;
import paperbark.batch.Batch;
import paperbark.batch.Disk;
import paperbark.batch.Ending;
import paperbark.batch.Outcome;
import paperbark.batch.OutputFolder;
import paperbark.batch.Request;
import paperbark.fault.FaultPoint;
import paperbark.ledger.Ledger;

/** Attends an office folder: takes each register to its end, one after another. */
public final class Attendant {
    /** A register at which the program failed so often goes back unread. */
    static final int MOST_FAULTS = 3;

    private final Office office;
    private final World world;
    private final Intake intake;
    private boolean recovered;

    /**
     * What the attendant sees of the world.
     *
     * @param now the moment, for people and for how long a file stayed the same
     * @param today the day of the run
     * @param quiet how long a file must stay the same before it is taken
     * @param version version of the program
     * @param tell takes a line for people
     */
    public record World(
            Supplier<Instant> now,
            Supplier<LocalDate> today,
            Duration quiet,
            String version,
            Consumer<String> tell) {}

    /** An attendant of the folder that it has the lock of. */
    public Attendant(OfficeLock lock, World world) {
        this.office = lock.office();
        this.world = world;
        this.intake = new Intake(office.intake(), world.quiet());
    }

    /**
     * What came of a round.
     *
     * @param endings how each register ended
     * @param waiting how many files wait in the intake
     */
    public record Round(List<Ending> endings, int waiting) {}

    /**
     * Finishes what was begun, then takes every register that is ready.
     *
     * @throws IOException when a folder cannot be read or written; the register is back in the
     *     intake then
     * @throws paperbark.ledger.LedgerException when the ledger cannot be trusted; likewise
     */
    public Round round() throws IOException {
        List<Ending> endings = new ArrayList<>();
        if (!recovered) {
            FaultPoint.LOCKED.reach();
            begin();
            for (WorkItem item : left()) {
                resume(item).ifPresent(endings::add);
            }
            noteFiled();
            recovered = true;
        }
        Intake.Look look = intake.look(world.now().get());
        for (Path file : look.ready()) {
            StatusPage.write(office, world, look.waiting(), Optional.of(file.getFileName()));
            endings.add(work(WorkItem.take(office, file)));
        }
        StatusPage.write(office, world, look.waiting(), Optional.empty());
        return new Round(List.copyOf(endings), look.waiting().size());
    }

    /**
     * A ledger that is not as it was written stops everything, before a copy of it pushes out one
     * that is.
     */
    private void begin() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            LedgerProof.prove(office, ledger);
            Backups.daily(office, ledger, world.today().get());
            AdviceFiles.complete(ledger, AdviceFiles.beside(office.ledger()));
            Forget.complete(office, ledger, world.today().get());
        }
    }

    /** A run may have been cut between moving a register and noting it. */
    private void noteFiled() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            for (Ledger.BatchState batch : ledger.unfiled(OutputFolder.id(office.packs()))) {
                if (Office.list(office.filed()).stream()
                        .anyMatch(year -> Files.isDirectory(year.resolve(batch.name())))) {
                    ledger.filed(batch.name());
                }
            }
        }
    }

    private List<WorkItem> left() throws IOException {
        try (Stream<Path> folders = Files.list(office.work())) {
            return folders.filter(Files::isDirectory).sorted().map(WorkItem::new).toList();
        }
    }

    /** Goes on with what an earlier run left behind. */
    private Optional<Ending> resume(WorkItem item) throws IOException {
        if (Returned.finish(office, item)) {
            return Optional.of(Ending.REFUSED);
        }
        if (item.source().isEmpty()) {
            Disk.delete(item.folder());
            return Optional.empty();
        }
        return Optional.of(work(item));
    }

    private Ending work(WorkItem item) throws IOException {
        Path source = item.source().orElseThrow();
        if (item.faults() >= MOST_FAULTS) {
            Returned.unread(office, item, world.today().get());
            return Ending.REFUSED;
        }
        try {
            Optional<String> before = unfiled(source);
            if (before.isPresent()) {
                file(item, before);
                return Ending.DONE;
            }
            Outcome outcome = new Batch((what, done, of) -> {}).prepare(request(source));
            end(item, outcome);
            return outcome.ending();
        } catch (IOException | RuntimeException | Error e) {
            // What the world did wrong leaves the register where the admin put it; a fault of ours
            // is counted, so that it cannot hold up the others for ever.
            if (Troubles.isOfTheWorld(e)) {
                item.putBack(office);
            } else {
                item.countFault();
            }
            throw e;
        }
    }

    /** The batch made of these bytes whose register is not where it stays yet. */
    private Optional<String> unfiled(Path source) throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return ledger.batchesOf(Batch.sha256(source)).stream()
                    .filter(b -> !b.filed())
                    .map(Ledger.BatchState::name)
                    .filter(name -> Files.isDirectory(office.packs().resolve(name)))
                    .findFirst();
        }
    }

    private Request request(Path source) {
        return new Request(
                        source,
                        Optional.empty(),
                        office.tables(),
                        office.templates(),
                        office.rules(),
                        office.packs(),
                        world.today().get(),
                        false,
                        world.version())
                .with(new Request.Books(Optional.of(office.ledger()), world.now().get(), false));
    }

    private void end(WorkItem item, Outcome outcome) throws IOException {
        String register = item.source().orElseThrow().getFileName().toString();
        switch (outcome.ending()) {
            case DONE, HELD, ALREADY -> {
                Optional<String> batch = outcome.published().map(p -> p.getFileName().toString());
                file(item, batch);
                world.tell()
                        .accept(
                                register
                                        + ": "
                                        + outcome.ending().sentence()
                                        + batch.map(b -> " packs/" + b).orElse(""));
            }
            case SETUP -> {
                item.putBack(office);
                world.tell().accept(register + ": " + outcome.ending().sentence());
                outcome.findings().stream()
                        .filter(f -> f.stops())
                        .forEach(
                                f ->
                                        world.tell()
                                                .accept(
                                                        "  "
                                                                + f.where()
                                                                + ": "
                                                                + f.fact()
                                                                + " "
                                                                + f.remedy()));
            }
            default -> {
                Returned.register(office, item, outcome.findings(), world.today().get());
                world.tell()
                        .accept(register + ": " + outcome.ending().sentence() + " See returned/.");
            }
        }
    }

    /** Moves the register to where it stays, as it came. */
    private void file(WorkItem item, Optional<String> batch) throws IOException {
        Path source = item.source().orElseThrow();
        String year = String.valueOf(world.today().get().getYear());
        Path folder =
                office.filed()
                        .resolve(year)
                        .resolve(batch.orElse(world.today().get() + "-nothing-new"));
        Files.createDirectories(folder);
        Disk.force(folder.getParent());
        Disk.force(office.filed());
        Disk.move(source, Office.free(folder, source.getFileName().toString()));
        FaultPoint.FILED.reach();
        if (batch.isPresent()) {
            try (Ledger ledger = Ledger.open(office.ledger())) {
                ledger.filed(batch.get());
            }
        }
        FaultPoint.NOTED.reach();
        Disk.delete(item.folder());
    }
}
