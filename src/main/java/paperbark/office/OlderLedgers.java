package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import paperbark.disk.Disk;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerException;
import paperbark.ledger.LedgerPlace;

/**
 * Ledgers as they were before they were brought to a newer schema. The lift was proved when it was
 * made; they go once a copy of the newer one is there too, since they hold what the newer one does
 * not: prints that tell of bank details and contacts.
 */
final class OlderLedgers {
    private static final String BEFORE = ".schema-";

    private OlderLedgers() {}

    /** Those that lie beside the ledger of an office. */
    static List<Path> in(Office office) throws IOException {
        return besides(office.root(), LedgerPlace.FILE);
    }

    /** Of the ledgers of a folder whose names begin so. */
    private static List<Path> besides(Path folder, String beginning) throws IOException {
        List<Path> files = new ArrayList<>(Office.list(folder));
        files.removeIf(f -> !isOf(f.getFileName().toString(), beginning));
        return files;
    }

    private static boolean isOf(String name, String beginning) {
        return name.startsWith(beginning) && name.contains(".db" + BEFORE);
    }

    /**
     * Deletes them, unless the newest copy of the ledger is not sound or does not hold all of it.
     *
     * @param ledger the office's, which was proved
     * @return how many are gone
     */
    static int clear(Office office, Ledger ledger) throws IOException {
        if (in(office).isEmpty() && besides(office.backups(), "paperbark-").isEmpty()) {
            return 0;
        }
        int gone = 0;
        List<Path> copies = Backups.newestFirst(office);
        if (!copies.isEmpty() && isWhole(copies.get(0), ledger)) {
            gone += delete(in(office));
            for (Path copy : copies) {
                List<Path> before = besides(office.backups(), copy.getFileName().toString());
                if (!before.isEmpty() && isSound(copy)) {
                    gone += delete(before);
                }
            }
        }
        return gone;
    }

    private static int delete(List<Path> files) throws IOException {
        for (Path file : files) {
            Files.delete(file);
            Disk.force(file.getParent());
        }
        return files.size();
    }

    private static boolean isWhole(Path copy, Ledger ledger) {
        try (Ledger newest = Ledger.open(copy)) {
            newest.verify();
            return newest.records().seals().equals(ledger.records().seals());
        } catch (LedgerException damaged) {
            // The proof of the ledger tells of it.
            return false;
        }
    }

    private static boolean isSound(Path copy) {
        try (Ledger lifted = Ledger.open(copy)) {
            lifted.verify();
            return true;
        } catch (LedgerException damaged) {
            // Likewise.
            return false;
        }
    }
}
