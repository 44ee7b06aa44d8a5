package paperbark.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import paperbark.disk.FolderLock;
import paperbark.disk.Staging;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.ledger.Batches;
import paperbark.ledger.Ledger;

/** Batches that runs which were cut short had taken into the ledger and not yet published. */
final class UnfinishedBatches {
    private final Ledger ledger;
    private final FolderLock own;
    private final Place place;
    private final List<Finding> findings = new ArrayList<>();

    private UnfinishedBatches(Ledger ledger, FolderLock own, Place place) {
        this.ledger = ledger;
        this.own = own;
        this.place = place;
    }

    /**
     * Publishes those that belong to this run's folder; others are their own folder's business.
     *
     * @param own the lock of this run's folder
     * @return what was noticed
     */
    static List<Finding> publish(Ledger ledger, FolderLock own, Request request)
            throws IOException {
        UnfinishedBatches unfinished =
                new UnfinishedBatches(ledger, own, new Place.InFile(request.register().name()));
        for (Batches.Unpublished batch :
                ledger.batches().unpublished(OutputFolder.id(request.out()))) {
            unfinished.publish(batch, request.out().resolve(batch.staged()));
        }
        return unfinished.findings;
    }

    /** An older ledger does not tell whose batch it is; another folder's is left to that one. */
    private void publish(Batches.Unpublished batch, Path hidden) throws IOException {
        if (!Files.isDirectory(hidden.getParent()) || own.isOf(hidden.getParent())) {
            finish(batch, hidden);
        }
    }

    private void finish(Batches.Unpublished batch, Path hidden) throws IOException {
        if (!Staging.finish(hidden, batch.name(), batch.manifestSha256())) {
            findings.add(
                    Finding.of(
                            FindingCode.BATCH_LOST,
                            place,
                            "The batch "
                                    + batch.name()
                                    + " is in the ledger and its folder is not there.",
                            "Prepare its register once more with --again."));
        }
        ledger.batches().notePublished(batch.name());
    }
}
