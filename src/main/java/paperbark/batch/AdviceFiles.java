package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import paperbark.disk.Disk;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;

/**
 * The settled advices, and whatever else has no batch folder, as files beside the ledger, which has
 * no other copy of them than the day's. A file is written after the commit; one that a cut kept
 * from being written comes with the next start.
 */
public final class AdviceFiles {
    /** Name of their folder. */
    public static final String FOLDER = "advices";

    private AdviceFiles() {}

    /** The folder that belongs to a ledger. */
    public static Path beside(LedgerPlace ledger) {
        return ledger.beside(FOLDER);
    }

    /** Writes the advices that have no file yet. */
    public static void complete(Ledger ledger, Path folder) throws IOException {
        for (EntryRecord advice : ledger.records().withoutFolder()) {
            Path file = file(folder, advice.name());
            if (!Files.exists(file)) {
                Disk.replace(file, new EntryFile(ledger.id(), advice).toJson());
            }
        }
    }

    /** The file of an entry. */
    static Path file(Path folder, String entry) {
        return folder.resolve(entry + ".json");
    }
}
