package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import paperbark.batch.Disk;
import paperbark.ledger.Ledger;

/** One copy of the ledger a day, the newest thirty kept. */
final class Backups {
    /** So many days are kept. */
    static final int KEPT = 30;

    private Backups() {}

    /** Copies the ledger, which was proved, unless the day has its copy. */
    static void daily(Office office, Ledger ledger, LocalDate today) throws IOException {
        Files.createDirectories(office.backups());
        Path copy = office.backups().resolve("paperbark-" + today + ".db");
        if (Files.exists(copy)) {
            return;
        }
        Path part = office.backups().resolve(".paperbark-" + today + ".part");
        Files.deleteIfExists(part);
        ledger.copyTo(part);
        Disk.move(part, copy);
        List<Path> all;
        try (Stream<Path> files = Files.list(office.backups())) {
            all =
                    files.filter(f -> f.getFileName().toString().matches("paperbark-.*\\.db"))
                            .sorted(Comparator.reverseOrder())
                            .toList();
        }
        for (Path old : all.subList(Math.min(KEPT, all.size()), all.size())) {
            Files.delete(old);
        }
    }
}
