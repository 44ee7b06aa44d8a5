package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.batch.AdviceFiles;
import paperbark.batch.EntryFile;
import paperbark.disk.Disk;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerPlace;
import paperbark.ledger.Proof;

/**
 * Makes an office's ledger anew when it is lost, damaged or an older copy: from the published
 * batches, the advices beside it, and the newest copy that is sound. What was there is set aside.
 */
public final class LedgerRebuild {
    private static final String PART = ".paperbark-rebuilt.part";
    // The database's own files beside its file; one left behind would be played into the new one.
    private static final List<String> COMPANIONS = List.of("", "-journal", "-wal", "-shm");

    private LedgerRebuild() {}

    /**
     * What was done.
     *
     * @param entries how many entries the ledger has now
     * @param setAside where the old one lies; empty when there was none
     * @param wasSound whether nothing had to be done
     */
    public record Result(int entries, Optional<Path> setAside, boolean wasSound) {}

    /**
     * Makes the ledger anew, unless it is sound and knows every published batch.
     *
     * @throws LedgerException when an entry is missing, two say different things, or the ledger is
     *     on a server; nothing is changed then
     * @throws paperbark.ledger.LedgerBusyException when another program writes in the ledger, which
     *     may be sound; likewise
     * @throws IOException when a file cannot be read or written
     */
    public static Result run(OfficeLock lock) throws IOException {
        Office office = lock.office();
        if (LedgerProof.trouble(office, new ArrayList<>()).isEmpty()) {
            try (Ledger ledger = Ledger.open(office.ledger())) {
                return new Result(ledger.records().all().size(), Optional.empty(), true);
            }
        }
        if (!(office.ledger() instanceof LedgerPlace.InFile)) {
            throw new LedgerException(
                    "The ledger is on a server, and the batches of other offices are not in this folder.",
                    office.ledger().remedy());
        }
        EntryFiles found = gather(office);
        Path part = office.root().resolve(PART);
        remove(part);
        try {
            LedgerPlace made = new LedgerPlace.InFile(part);
            Ledger.rebuild(made, found.id(), found.inOrder());
            try (Ledger ledger = Ledger.open(made)) {
                LedgerProof.prove(office, ledger, new Proof(), ProvedFiles.none());
            }
            Optional<Path> aside = setAside(office);
            Disk.move(part, office.ledgerFile());
            return new Result(found.inOrder().size(), aside, false);
        } finally {
            remove(part);
        }
    }

    private static EntryFiles gather(Office office) throws IOException {
        EntryFiles found = new EntryFiles();
        for (Path batch : Office.list(office.packs())) {
            if (!Office.isHidden(batch)) {
                Optional<EntryFile> entry = EntryFile.ofBatch(batch);
                entry.ifPresent(file -> found.add(file, "packs/" + batch.getFileName()));
            }
        }
        for (Path advice : Office.list(AdviceFiles.beside(office.ledger()))) {
            if (!Office.isHidden(advice)) {
                Optional<EntryFile> entry = EntryFile.read(advice);
                entry.ifPresent(file -> found.add(file, "advices/" + advice.getFileName()));
            }
        }
        for (Path copy : Backups.newestFirst(office)) {
            if (found.addCopy(copy)) {
                break;
            }
        }
        found.fillFrom(office.ledgerFile());
        return found;
    }

    /** Moves the old ledger and its journal out of the way, under a name that nothing has. */
    private static Optional<Path> setAside(Office office) throws IOException {
        Path aside = Office.free(office.root(), "paperbark-set-aside.db");
        for (String companion : COMPANIONS) {
            Path file = beside(office.ledgerFile(), companion);
            if (Files.exists(file)) {
                Disk.move(file, beside(aside, companion));
            }
        }
        return Files.exists(aside) ? Optional.of(aside) : Optional.empty();
    }

    private static void remove(Path part) throws IOException {
        for (String companion : COMPANIONS) {
            Files.deleteIfExists(beside(part, companion));
        }
    }

    private static Path beside(Path file, String companion) {
        return file.resolveSibling(file.getFileName() + companion);
    }
}
