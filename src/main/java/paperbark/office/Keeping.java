package paperbark.office;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import paperbark.entitlement.Retention;
import paperbark.finding.RuleRef;
import paperbark.ledger.JobVersion;
import paperbark.ledger.Ledger;
import paperbark.rules.Rulebook;

/**
 * For how long something of a job is kept.
 *
 * @param what in words
 * @param until the last day on which it must be there
 * @param because source of the rule; empty text for a warranty
 */
public record Keeping(String what, LocalDate until, String because) {

    /**
     * All that is to be kept of a job, the longest first.
     *
     * @param versions what the ledger has of it; at least one
     * @param warrantyUntil when the last warranty ends, where known
     * @param rules folder of the firm's newer rule tables
     */
    public static List<Keeping> of(
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
        return Retention.of(facts, Rulebook.load(rules)).stream()
                .map(
                        p ->
                                new Keeping(
                                        p.what(),
                                        p.until(),
                                        p.rule().map(RuleRef::inWords).orElse("")))
                .toList();
    }

    /** The last day of the longest warranty, where the ledger knows it. */
    public static Optional<LocalDate> warrantyUntil(List<JobVersion> versions) {
        return versions.stream()
                .flatMap(v -> v.warrantyUntil().stream())
                .max(Comparator.naturalOrder());
    }
}
