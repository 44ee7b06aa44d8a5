package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import paperbark.batch.EntryFile;
import paperbark.batch.LostBatch;
import paperbark.batch.OutputFolder;
import paperbark.batch.Request;
import paperbark.disk.Disk;
import paperbark.disk.Staging;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerPlace;

/** Batches that the ledger has as published in an office, and whose folders are there no more. */
final class LostBatches {
    private final Office office;
    private final Ledger ledger;
    private final Witnesses witnesses;

    LostBatches(Office office, Ledger ledger, Witnesses witnesses) {
        this.office = office;
        this.ledger = ledger;
        this.witnesses = witnesses;
    }

    /** Their names; the id of {@code packs} may be lost too, but the filed registers are ours. */
    List<String> names() throws IOException {
        List<String> lost = new ArrayList<>();
        // Whoever keeps no office folder puts finished batches where they like.
        Optional<String> place =
                OutputFolder.known(office.packs()).filter(id -> Files.isDirectory(office.intake()));
        TreeSet<String> names = new TreeSet<>();
        place.ifPresent(id -> names.addAll(ledger.batches().publishedIn(id)));
        witnesses.filed().forEach(filed -> names.add(filed.getFileName().toString()));
        for (String batch : names) {
            if (witnesses.batches().of(office, batch).isEmpty()) {
                lost.add(batch);
            }
        }
        return lost;
    }

    /** What is told of them where they are not made again at once. */
    List<String> noticed() throws IOException {
        List<String> lines = new ArrayList<>();
        for (String batch : names()) {
            lines.add(
                    gone(batch)
                            + (witnesses.registerOf(batch).isPresent()
                                    ? " The next start of watch makes them again from filed/."
                                    : BRING_BACK));
        }
        return lines;
    }

    private static final String BRING_BACK =
            " Their register is not in filed/ either: bring the folder back from a backup.";

    private static String gone(String batch) {
        return "The papers of batch " + batch + " are not in packs/ any more.";
    }

    /**
     * Makes them again.
     *
     * @return what was done, in a sentence each
     * @throws IOException when a file cannot be read or written
     */
    List<String> restore(Attendant.World world) throws IOException {
        List<String> lines = new ArrayList<>();
        for (String batch : names()) {
            EntryRecord entry = ledger.records().named(batch).orElseThrow();
            lines.add(
                    isHiddenStill(entry)
                            ? "Batch " + batch + " lay hidden in packs/ and is visible again."
                            : restored(entry, world));
        }
        return lines;
    }

    private boolean isHiddenStill(EntryRecord entry) throws IOException {
        for (Path hidden : Office.list(office.packs())) {
            if (Office.isHidden(hidden)
                    && Files.isDirectory(hidden)
                    && Staging.finish(hidden, entry.name(), entry.detailSha256())) {
                return true;
            }
        }
        return false;
    }

    private String restored(EntryRecord entry, Attendant.World world) throws IOException {
        Optional<Path> register = witnesses.registerOf(entry.name());
        if (register.isEmpty()) {
            return gone(entry.name()) + BRING_BACK;
        }
        Path desk = office.temporary().resolve("again");
        Disk.delete(desk);
        try {
            Optional<LostBatch.Made> made =
                    LostBatch.make(
                            request(register.get(), entry, desk, world),
                            new EntryFile(ledger.id(), entry));
            if (made.isEmpty()) {
                return gone(entry.name())
                        + " They could not be made again from filed/ with the tables of today. Bring the"
                        + " folder back from a backup.";
            }
            Disk.move(made.get().folder(), office.packs().resolve(entry.name()));
            return gone(entry.name())
                    + (made.get().asItWas()
                            ? " They are made again, as they were."
                            : " They are made again, but tables, templates, program or register are not as"
                                    + " they were: hold them against what was signed.");
        } finally {
            Disk.delete(desk);
        }
    }

    private Request request(Path register, EntryRecord entry, Path desk, Attendant.World world)
            throws IOException {
        return new Request(
                new Request.Register(register, Optional.empty()),
                new Request.FirmFiles(office.tables(), office.templates(), office.rules()),
                desk.resolve("packs"),
                new Request.Run(
                        LocalDate.parse(entry.day()), Instant.parse(entry.at()), world.version()),
                Request.Extras.OFFICE,
                new Request.LedgerUse(Optional.of(before(entry, desk)), false));
    }

    /** The ledger as it was when the batch was prepared. */
    private LedgerPlace before(EntryRecord entry, Path desk) throws IOException {
        Disk.makeFolders(desk);
        LedgerPlace.InFile place = new LedgerPlace.InFile(desk.resolve(LedgerPlace.FILE));
        try {
            Ledger.rebuild(place, ledger.id(), ledger.records().before(entry.seq()));
        } catch (LedgerException forgottenSince) {
            // What is emptied cannot be proved without the entry that says so.
            Disk.delete(desk);
            Disk.makeFolders(desk);
            Ledger.create(place, Instant.parse(entry.at()));
        }
        Path key = office.ledger().key();
        if (Files.exists(key) && !Files.exists(place.key())) {
            Files.copy(key, place.key());
        }
        return place;
    }
}
