package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.batch.Batch;
import paperbark.batch.Ending;
import paperbark.batch.Outcome;
import paperbark.batch.Progress;
import paperbark.batch.Request;
import paperbark.batch.Trouble;
import paperbark.disk.Disk;
import paperbark.disk.Hashes;
import paperbark.disk.Rights;
import paperbark.fault.FaultPoint;
import paperbark.finding.Finding;
import paperbark.finding.Severity;
import paperbark.ledger.Batches;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Ledger;
import paperbark.ledger.Lodging;
import paperbark.ledger.Proof;

/** Takes one register to its end: filed, given back, or put back into the intake. */
final class Handling {
    /** A register at which the program failed so often goes back unread. */
    static final int MOST_FAULTS = 3;

    /** Beside a register that answers complete: the answers as they came. */
    private static final String ANSWERS = "answers";

    private final Office office;
    private final Attendant.World world;
    private final Batch batch;
    private final Map<String, String> told = new HashMap<>();

    /**
     * A handling of registers of one office.
     *
     * @param proof what is proved of the ledger
     * @param progress is told how far a register is
     */
    Handling(Office office, Attendant.World world, Proof proof, Progress progress) {
        this.office = office;
        this.world = world;
        this.batch = new Batch(progress, proof);
    }

    /** Goes on with what an earlier run left behind. */
    Optional<Ending> resume(WorkItem item) throws IOException {
        if (Returned.finish(office, item)) {
            return Optional.of(Ending.REFUSED);
        }
        if (item.source().isEmpty()) {
            Disk.delete(item.folder());
            return Optional.empty();
        }
        return Optional.of(work(item));
    }

    /**
     * Works on a register.
     *
     * @throws IOException when a folder cannot be read or written; the register is back in the
     *     intake then, or where the next start finds it
     */
    Ending work(WorkItem item) throws IOException {
        Path source = item.source().orElseThrow();
        if (item.faults() >= MOST_FAULTS) {
            Returned.unread(office, item, world.today().get());
            tell(source, Ending.REFUSED, " See returned/.");
            return Ending.REFUSED;
        }
        try {
            return prepared(item, source);
        } catch (IOException | RuntimeException | Error e) {
            giveUp(item, e);
            throw e;
        }
    }

    private Ending prepared(WorkItem item, Path source) throws IOException {
        Path register = source;
        AnswerDesk desk = new AnswerDesk(office);
        if (desk.isAnswers(source)) {
            AnswerDesk.Result answered = desk.completed(source, item.answered());
            if (answered.register().isEmpty()) {
                Returned.register(office, item, answered.findings(), world.today().get());
                tell(source, Ending.REFUSED, " See returned/.");
                return Ending.REFUSED;
            }
            register = answered.register().get();
        }
        Optional<String> before = unfiled(register);
        if (before.isPresent()) {
            file(item, register, before);
            tell(source, Ending.DONE, " packs/" + before.get());
            return Ending.DONE;
        }
        Outcome outcome = batch.prepare(request(register));
        end(item, register, outcome);
        return outcome.ending();
    }

    /**
     * What the world did wrong leaves the register where the admin put it; a fault of ours is
     * counted, so that it cannot hold up the others for ever.
     */
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

    /**
     * What the tables keep from being done.
     *
     * @param there what lies in the intake; others were taken back by their owner
     */
    List<String> troubles(Collection<String> there) {
        told.keySet().retainAll(there);
        return told.values().stream().sorted().toList();
    }

    /**
     * The batch made of these bytes whose register is not where it stays yet. One with a claim that
     * is past its last day was made long ago, and the register is here to take that back.
     */
    private Optional<String> unfiled(Path source) throws IOException {
        LocalDate today = world.today().get();
        try (Ledger ledger = Ledger.open(office.ledger())) {
            List<String> unfiled =
                    ledger.batches().of(Hashes.sha256(source)).stream()
                            .filter(b -> !b.filed())
                            .map(Batches.BatchState::name)
                            .filter(name -> Files.isDirectory(office.packs().resolve(name)))
                            .toList();
            // Hardly ever is there one, and asking about claims takes long in a large office.
            if (unfiled.isEmpty()) {
                return Optional.empty();
            }
            Set<String> past =
                    Lodging.fallingAway(ledger, today).stream()
                            .map(ClaimState::batch)
                            .collect(Collectors.toSet());
            return unfiled.stream().filter(name -> !past.contains(name)).findFirst();
        }
    }

    private Request request(Path source) {
        return new Request(
                new Request.Register(source, Optional.empty()),
                new Request.FirmFiles(office.tables(), office.templates(), office.rules()),
                office.packs(),
                new Request.Run(world.today().get(), world.now().get(), world.version()),
                Request.Extras.OFFICE,
                new Request.LedgerUse(Optional.of(office.ledger()), false));
    }

    private void end(WorkItem item, Path register, Outcome outcome) throws IOException {
        Path source = item.source().orElseThrow();
        switch (outcome.ending()) {
            case DONE, HELD, ALREADY -> {
                Optional<String> made = outcome.published().map(p -> p.getFileName().toString());
                file(item, register, made);
                // Without a batch there is no page that tells what is to be done.
                String more = made.map(b -> " packs/" + b).orElse(said(outcome, Severity.CHECK));
                tell(source, outcome.ending(), more);
            }
            case SETUP -> {
                item.putBack(office);
                tell(source, outcome.ending(), said(outcome, Severity.STOP));
            }
            default -> {
                Returned.register(office, item, outcome.findings(), world.today().get());
                tell(source, outcome.ending(), " See returned/.");
            }
        }
    }

    /** The same of the same register again is not said again: a person knows already. */
    private void tell(Path source, Ending ending, String more) {
        String register = source.getFileName().toString();
        String line = register + ": " + ending.sentence() + more;
        String before = ending == Ending.SETUP ? told.put(register, line) : told.remove(register);
        if (!line.equals(before)) {
            world.tell().accept(line);
        }
    }

    /** The findings of that severity and graver ones. */
    private static String said(Outcome outcome, Severity least) {
        StringBuilder reasons = new StringBuilder();
        for (Finding finding : outcome.findings()) {
            if (finding.severity().compareTo(least) >= 0) {
                reasons.append("\n  ").append(finding.where()).append(": ");
                reasons.append(finding.fact()).append(' ').append(finding.remedy());
            }
        }
        return reasons.toString();
    }

    /**
     * Moves the register to where it stays, as it came. Answers go beside the register that they
     * complete, and that holds them.
     */
    private void file(WorkItem item, Path register, Optional<String> made) throws IOException {
        String year = String.valueOf(world.today().get().getYear());
        Path folder =
                office.filed()
                        .resolve(year)
                        .resolve(made.orElse(world.today().get() + Witnesses.NOTHING_NEW));
        Disk.makeFolders(folder);
        Disk.force(folder.getParent());
        Disk.force(office.filed());
        // Answers are taken in once more where a run was cut after their register was filed.
        if (register.startsWith(item.answered()) && isThere(folder, register)) {
            Files.delete(register);
        } else {
            Path filed = Office.free(folder, register.getFileName().toString());
            Disk.move(register, filed);
            Rights.ofFolderAroundIfOwn(filed);
        }
        Optional<Path> answers = item.source().filter(source -> !source.equals(register));
        if (answers.isPresent()) {
            Path beside = folder.resolve(ANSWERS);
            Disk.makeFolders(beside);
            Disk.move(answers.get(), Office.free(beside, answers.get().getFileName().toString()));
        }
        FaultPoint.FILED.reach();
        if (made.isPresent()) {
            try (Ledger ledger = Ledger.open(office.ledger())) {
                ledger.batches().noteFiled(made.get());
            }
        }
        FaultPoint.NOTED.reach();
        Disk.delete(item.folder());
    }

    private static boolean isThere(Path folder, Path register) throws IOException {
        String sha256 = Hashes.sha256(register);
        for (Path file : Office.list(folder)) {
            if (Files.isRegularFile(file) && Hashes.sha256(file).equals(sha256)) {
                return true;
            }
        }
        return false;
    }
}
