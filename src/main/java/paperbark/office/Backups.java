package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import paperbark.disk.Disk;
import paperbark.disk.Rights;
import paperbark.ledger.Ledger;

/** One copy of the ledger a day, each kept for some time. */
final class Backups {
    /** So many copies stay whatever day it is said to be. */
    static final int ALWAYS_KEPT = 7;

    private Backups() {}

    /** The copies there are, the newest first. */
    static List<Path> newestFirst(Office office) throws IOException {
        List<Path> copies = new ArrayList<>(Office.list(office.backups()));
        copies.removeIf(f -> !f.getFileName().toString().matches("paperbark-.*\\.db"));
        Collections.reverse(copies);
        return copies;
    }

    /**
     * Copies the ledger, which was proved, unless the day has its copy.
     *
     * @param days for how long a copy is kept; the day's own always is
     */
    static void daily(Office office, Ledger ledger, LocalDate today, int days) throws IOException {
        Path copy = copy(office, today);
        if (Files.exists(copy)) {
            return;
        }
        Disk.move(make(office, ledger, today), copy);
        Optional<LocalDate> day = witnessed(office, ledger, today);
        if (day.isEmpty()) {
            return;
        }
        // Names of copies are in the order of their days.
        Path oldest = copy(office, day.get().minusDays(days));
        List<Path> copies = newestFirst(office);
        for (Path old : copies.subList(Math.min(ALWAYS_KEPT, copies.size()), copies.size())) {
            if (old.compareTo(oldest) < 0) {
                Files.delete(old);
            }
        }
    }

    /**
     * The day that the clock and another witness agree is reached: the newest file that people
     * brought, or else the newest entry, which may be of the same wrong clock. A clock alone may be
     * years ahead.
     */
    private static Optional<LocalDate> witnessed(Office office, Ledger ledger, LocalDate today)
            throws IOException {
        return newestFile(office)
                .or(ledger.records()::newestDay)
                .map(witness -> witness.isBefore(today) ? witness : today);
    }

    private static Optional<LocalDate> newestFile(Office office) throws IOException {
        Optional<FileTime> newest = Optional.empty();
        for (Path folder : List.of(office.intake(), office.filed(), office.returned())) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path file : all.filter(Files::isRegularFile).toList()) {
                    FileTime time = Files.getLastModifiedTime(file);
                    newest = newest.filter(t -> t.compareTo(time) > 0).or(() -> Optional.of(time));
                }
            }
        }
        return newest.map(t -> LocalDate.ofInstant(t.toInstant(), ZoneOffset.UTC));
    }

    /**
     * Copies the ledger as it is now, and deletes every older copy.
     *
     * @return the names of those that are gone
     */
    static List<String> renew(Office office, Ledger ledger, LocalDate today) throws IOException {
        Path copy = copy(office, today);
        Files.move(
                make(office, ledger, today),
                copy,
                StandardCopyOption.ATOMIC_MOVE,
                StandardCopyOption.REPLACE_EXISTING);
        Disk.force(office.backups());
        List<String> gone = new ArrayList<>();
        for (Path old : newestFirst(office)) {
            if (!old.equals(copy)) {
                Files.delete(old);
                gone.add(old.getFileName().toString());
            }
        }
        return gone;
    }

    private static Path copy(Office office, LocalDate day) {
        return office.backups().resolve("paperbark-" + day + ".db");
    }

    private static Path make(Office office, Ledger ledger, LocalDate today) throws IOException {
        Disk.makeFolders(office.backups());
        Path part = office.backups().resolve(".paperbark-" + today + ".part");
        Files.deleteIfExists(part);
        ledger.copyTo(part);
        Rights.ofFolderAround(part);
        return part;
    }
}
