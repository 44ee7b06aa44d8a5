package paperbark.batch;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
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
 */
record EarlierBatches(Request request, Optional<Ledger> ledger, boolean hasTooLate) {

    /**
     * Asks the ledger.
     *
     * @param late keys of jobs with a claim that falls away when their register comes again
     * @param jobs those of the register, asked for only where there is such a claim
     */
    static EarlierBatches of(
            Request request, Optional<Ledger> ledger, Set<String> late, Supplier<List<Job>> jobs) {
        return new EarlierBatches(request, ledger, !late.isEmpty() && hasOne(jobs.get(), late));
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

    /**
     * The folder of an earlier batch that the same bytes with the same tables would only repeat.
     */
    Optional<Path> repeated(Manifest.Sources sources) throws IOException {
        if (ledger.isEmpty() || request.ledger().again()) {
            return Optional.empty();
        }
        return ledger.get().batches().of(Hashes.sha256(request.register().file())).stream()
                .filter(batch -> !countsNoLonger(batch.name()))
                .map(batch -> request.out().resolve(batch.name()))
                .filter(folder -> Manifest.repeats(folder.resolve("manifest.json"), sources))
                .findFirst();
    }
}
