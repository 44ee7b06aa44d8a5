package paperbark.batch;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.disk.Hashes;
import paperbark.job.Job;
import paperbark.ledger.Keys;
import paperbark.ledger.Ledger;

/**
 * Which earlier batches count still, so that a register of the same bytes would only repeat them.
 *
 * @param request what is asked for
 * @param ledger the ledger; empty where the firm keeps none
 * @param hasTooLate whether a job of the register has a claim that can be lodged no longer, which
 *     falls away once the register is taken in again
 * @param installed days of installation that the register tells
 */
record EarlierBatches(
        Request request, Optional<Ledger> ledger, boolean hasTooLate, Set<LocalDate> installed) {

    /**
     * Asks the ledger.
     *
     * @param late keys of jobs with a claim that falls away when their register comes again
     * @param jobs those of the register
     */
    static EarlierBatches of(
            Request request, Optional<Ledger> ledger, Set<String> late, List<Job> jobs) {
        Set<LocalDate> installed =
                jobs.stream()
                        .flatMap(job -> job.installedOn().stream())
                        .collect(Collectors.toSet());
        return new EarlierBatches(request, ledger, hasOne(jobs, late), installed);
    }

    /** Of two rows with one number neither changes what stands. */
    private static boolean hasOne(List<Job> jobs, Set<String> late) {
        return jobs.stream()
                .map(job -> Keys.job(job.reference()))
                .filter(late::contains)
                .collect(Collectors.groupingBy(key -> key, Collectors.counting()))
                .containsValue(1L);
    }

    /** Whether a batch of that name was ever taken in. */
    boolean knows(String batch) {
        return ledger.map(l -> l.batches().isKnown(batch)).orElse(false);
    }

    /** Whether a batch says no longer what is so: a job of it was booked out, or falls away now. */
    boolean countsNoLonger(String batch) {
        return hasTooLate || ledger.map(l -> l.batches().hasWithdrawn(batch)).orElse(false);
    }

    /** Whether a day of installation that was still to come on that of a batch is there by now. */
    private boolean hasComeSince(LocalDate day) {
        return installed.stream()
                .anyMatch(on -> on.isAfter(day) && !on.isAfter(request.run().today()));
    }

    /**
     * The folder of an earlier batch that the same bytes with the same tables would only repeat.
     */
    Optional<Path> repeated(Manifest.Sources sources) throws IOException {
        if (ledger.isEmpty() || request.ledger().again()) {
            return Optional.empty();
        }
        return ledger.get().batches().of(Hashes.sha256(request.register().file())).stream()
                .filter(batch -> !countsNoLonger(batch.name()) && !hasComeSince(batch.day()))
                .map(batch -> request.out().resolve(batch.name()))
                .filter(folder -> Manifest.repeats(folder.resolve("manifest.json"), sources))
                .findFirst();
    }
}
