package paperbark.office;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.batch.OutputFolder;
import paperbark.disk.FolderLock;
import paperbark.ledger.Batches;
import paperbark.ledger.Ledger;
import paperbark.ledger.LedgerBusyException;
import paperbark.ledger.LedgerException;

/** Looks for what runs that were cut short left behind, while no program is at work. */
final class Leftovers {
    private final Office office;
    private final Instant now;

    Leftovers(Office office, Instant now) {
        this.office = office;
        this.now = now;
    }

    /** What was found; one line that all is tidy otherwise. */
    List<CheckResult> look() throws IOException {
        List<CheckResult> checks = new ArrayList<>();
        for (Path item : Office.list(office.work())) {
            if (!Office.isHidden(item)) {
                checks.add(
                        CheckResult.well(
                                "left over",
                                "work/" + item.getFileName() + ": the next watch finishes it"));
            }
        }
        if (halfForgotten()) {
            checks.add(
                    CheckResult.well(
                            "left over",
                            "papers of a job that is forgotten: the next watch finishes it"));
        }
        hidden(checks);
        for (Path file : OlderLedgers.in(office)) {
            checks.add(
                    CheckResult.well(
                            "left over",
                            file.getFileName()
                                    + ": the ledger as an earlier version wrote it, with prints of"
                                    + " bank details and contacts. The next watch deletes it once"
                                    + " backups/ has a copy of the newer one."));
        }
        return checks.isEmpty() ? List.of(CheckResult.well("left over", "nothing")) : checks;
    }

    private boolean halfForgotten() throws IOException {
        try (Ledger ledger = Ledger.open(office.ledger())) {
            return Forget.isUnfinished(office, ledger);
        } catch (LedgerException | LedgerBusyException | UncheckedIOException told) {
            // The ledger's own line says so.
            return false;
        }
    }

    /** Nobody is told to delete what may be somebody's only copy, or is being made. */
    private void hidden(List<CheckResult> checks) throws IOException {
        List<Path> folders =
                Office.list(office.packs()).stream()
                        .filter(f -> Office.isHidden(f) && Files.isDirectory(f))
                        .toList();
        if (folders.isEmpty()) {
            return;
        }
        try (Ledger ledger = Ledger.open(office.ledger())) {
            Set<String> waiting = waiting(ledger);
            List<Path> nobodys = new HalfMade(office, ledger).found(now);
            boolean atWork = isAtWork();
            for (Path folder : folders) {
                String name = folder.getFileName().toString();
                String said =
                        waiting.contains(name)
                                ? "the next run publishes it"
                                : atWork
                                        ? "another run is at work here; leave it"
                                        : nobodys.contains(folder)
                                                ? "half-made and in no ledger; the next watch clears it"
                                                : "it may be the only copy of a batch; leave it";
                checks.add(CheckResult.well("left over", "packs/" + name + ": " + said));
            }
        } catch (LedgerException | LedgerBusyException | UncheckedIOException told) {
            // The ledger's own line says so.
            folders.forEach(
                    f ->
                            checks.add(
                                    CheckResult.well(
                                            "left over",
                                            "packs/"
                                                    + f.getFileName()
                                                    + ": leave it until the ledger is well")));
        }
    }

    private Set<String> waiting(Ledger ledger) throws IOException {
        String place = OutputFolder.known(office.packs()).orElse("");
        return ledger.batches().unpublished(place).stream()
                .map(Batches.Unpublished::staged)
                .collect(Collectors.toSet());
    }

    private boolean isAtWork() throws IOException {
        Optional<FolderLock> lock = FolderLock.tryTake(office.packs());
        if (lock.isPresent()) {
            lock.get().close();
        }
        return lock.isEmpty();
    }
}
