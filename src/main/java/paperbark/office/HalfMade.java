package paperbark.office;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.disk.Disk;
import paperbark.disk.FolderLock;
import paperbark.disk.Hashes;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerPlace;

/**
 * Hidden folders in {@code packs} that a run which was cut short left behind. They hold whole packs
 * and so people's data. What is in the ledger is never touched: it may be somebody's only copy.
 */
final class HalfMade {
    // A server may be busy for a while with a commit whose answer never came.
    private static final Duration LONGEST_COMMIT = Duration.ofHours(1);

    private final Office office;
    private final Ledger ledger;

    HalfMade(Office office, Ledger ledger) {
        this.office = office;
        this.ledger = ledger;
    }

    /** Those that nobody needs; none while another run is at work in {@code packs}. */
    List<Path> found(Instant now) throws IOException {
        List<Path> found = new ArrayList<>();
        for (Path folder : Office.list(office.packs())) {
            if (Office.isHidden(folder) && Files.isDirectory(folder) && isNobodys(folder, now)) {
                found.add(folder);
            }
        }
        return found;
    }

    private boolean isNobodys(Path folder, Instant now) throws IOException {
        Path manifest = folder.resolve("manifest.json");
        if (!Files.isRegularFile(manifest)) {
            return true;
        }
        boolean mayBeOnItsWay =
                office.ledger() instanceof LedgerPlace.OnServer
                        && now.isBefore(
                                Files.getLastModifiedTime(manifest)
                                        .toInstant()
                                        .plus(LONGEST_COMMIT));
        return !mayBeOnItsWay && !ledger.batches().hasManifest(Hashes.sha256(manifest));
    }

    /**
     * Deletes them, unless another run is at work in {@code packs}.
     *
     * @return how many
     */
    int clear(Instant now) throws IOException {
        Optional<FolderLock> lock = FolderLock.tryTake(office.packs());
        if (lock.isEmpty()) {
            return 0;
        }
        try (FolderLock held = lock.get()) {
            List<Path> found = held.isOf(office.packs()) ? found(now) : List.of();
            for (Path folder : found) {
                Disk.delete(folder);
            }
            return found.size();
        }
    }
}
