package paperbark.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.codec.digest.DigestUtils;
import paperbark.batch.EntryFile;
import paperbark.batch.ForgottenFiles;
import paperbark.disk.Disk;
import paperbark.ledger.EntryRecord;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;

/**
 * Takes out of batch folders the prints that earlier programs made without a key, bank details
 * among them: the entry beside the papers becomes the one that the ledger has now.
 */
final class OldPrints {
    private OldPrints() {}

    /**
     * Does it, once an office.
     *
     * @return in how many batches something was emptied
     * @throws IOException when a file cannot be read or written; the next start goes on with it
     */
    static int empty(Office office, Ledger ledger) throws IOException {
        Path mark = office.packs().resolve(".paperbark-keyed");
        if (Files.exists(mark)) {
            return 0;
        }
        int emptied = 0;
        for (Path batch : Office.list(office.packs())) {
            if (!Office.isHidden(batch) && isOlder(batch)) {
                Optional<EntryRecord> now = ledger.records().named(batch.getFileName().toString());
                if (now.isPresent()) {
                    replace(batch, new EntryFile(ledger.id(), now.get().withDetail("")).toJson());
                    emptied++;
                }
            }
        }
        copies(office);
        Disk.replace(mark, "\n".getBytes(StandardCharsets.UTF_8));
        return emptied;
    }

    /** Copies of a day are lifted as the ledger was. */
    private static void copies(Office office) throws IOException {
        for (Path copy : Backups.newestFirst(office)) {
            try (Ledger lifted = Ledger.open(copy)) {
                lifted.id();
            } catch (LedgerException damaged) {
                // The proof of the ledger tells of it.
                continue;
            }
        }
    }

    private static boolean isOlder(Path batch) throws IOException {
        return EntryFile.ofBatch(batch).filter(f -> f.entry().hasOlderSchema()).isPresent();
    }

    private static void replace(Path batch, byte[] entry) throws IOException {
        // The list first: a file that is neither as the manifest nor as the list says is not ours.
        ForgottenFiles.in(batch)
                .with(Map.of(EntryFile.NAME, DigestUtils.sha256Hex(entry)))
                .into(batch);
        Disk.replace(batch.resolve(EntryFile.NAME), entry);
    }
}
