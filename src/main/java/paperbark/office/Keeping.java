package paperbark.office;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import paperbark.entitlement.Retention;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Ledger;
import paperbark.rules.Rulebook;

/** For how long what the ledger has of a job is kept. */
final class Keeping {
    private Keeping() {}

    /**
     * All that is to be kept of a job, the longest first.
     *
     * @param versions what the ledger has of it; at least one
     * @param warrantyUntil when the last warranty ends, where known
     * @param rules folder of the firm's newer rule tables
     */
    static List<Retention.Period> of(
            Ledger ledger,
            String job,
            List<JobVersion> versions,
            Optional<LocalDate> warrantyUntil,
            Optional<Path> rules) {
        LocalDate completed =
                versions.stream()
                        .map(v -> v.installedOn().orElse(v.day()))
                        .max(Comparator.naturalOrder())
                        .orElseThrow();
        Retention.Job facts = new Retention.Job(completed, ledger.lastDays(job), warrantyUntil);
        return Retention.of(facts, Rulebook.load(rules));
    }

    /** The last day of the longest warranty, where the ledger knows it. */
    static Optional<LocalDate> warrantyUntil(List<JobVersion> versions) {
        return versions.stream()
                .flatMap(v -> v.warrantyUntil().stream())
                .max(Comparator.naturalOrder());
    }
}
