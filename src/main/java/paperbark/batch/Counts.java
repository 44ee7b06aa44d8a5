package paperbark.batch;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import paperbark.firm.SchemeName;
import paperbark.output.CaseFile;

/**
 * The figures of a batch.
 *
 * @param jobs jobs read
 * @param packs packs made
 * @param heldJobs jobs with a paper held back
 * @param certificates certificates on papers that are not held, by scheme
 */
public record Counts(int jobs, int packs, int heldJobs, Map<SchemeName, Integer> certificates) {
    /** Nothing done. */
    public static final Counts NONE = new Counts(0, 0, 0, Map.of());

    /** Counts the cases of a batch. */
    static Counts of(List<CaseFile> cases, int packs) {
        Map<SchemeName, Integer> certificates = new EnumMap<>(SchemeName.class);
        for (CaseFile file : cases) {
            file.claimable()
                    .forEach(
                            e ->
                                    certificates.merge(
                                            e.scheme(), e.certificates().orElse(0), Integer::sum));
        }
        int held = (int) cases.stream().filter(CaseFile::isHeld).count();
        return new Counts(cases.size(), packs, held, Map.copyOf(certificates));
    }
}
