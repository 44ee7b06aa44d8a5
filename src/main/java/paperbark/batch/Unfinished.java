package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.ledger.Ledger;

/** Batches that runs which were cut short had taken into the ledger and not yet published. */
final class Unfinished {
    private final Ledger ledger;
    private final FolderLock own;
    private final Place place;
    private final List<Finding> findings = new ArrayList<>();

    private Unfinished(Ledger ledger, FolderLock own, Place place) {
        this.ledger = ledger;
        this.own = own;
        this.place = place;
    }

    /**
     * Publishes them, except where another run is at work: that one publishes its batch itself.
     *
     * @param own the lock of this run's folder
     * @return what was noticed
     */
    static List<Finding> publish(Ledger ledger, FolderLock own, Request request)
            throws IOException {
        Unfinished unfinished =
                new Unfinished(
                        ledger, own, new Place.InFile(request.register().getFileName().toString()));
        for (Ledger.Unpublished batch : ledger.unpublished()) {
            unfinished.publish(batch);
        }
        return unfinished.findings;
    }

    private void publish(Ledger.Unpublished batch) throws IOException {
        Path folder = Path.of(batch.staged()).toAbsolutePath().getParent();
        if (!Files.isDirectory(folder) || own.isOf(folder)) {
            finish(batch);
            return;
        }
        // Two output folders may share a ledger.
        Optional<FolderLock> other = FolderLock.tryTake(folder);
        if (other.isPresent()) {
            try (FolderLock held = other.get()) {
                if (held.isOf(folder) && ledger.unpublished().contains(batch)) {
                    finish(batch);
                }
            }
        }
    }

    private void finish(Ledger.Unpublished batch) throws IOException {
        if (!Staging.finish(batch.staged(), batch.name(), batch.manifestSha256())) {
            findings.add(
                    Finding.of(
                            FindingCode.BATCH_LOST,
                            place,
                            "The batch "
                                    + batch.name()
                                    + " is in the ledger and its folder is not there.",
                            "Prepare its register once more with --again."));
        }
        ledger.published(batch.name());
    }
}
