package paperbark.batch;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import paperbark.entitlement.Entitlement;
import paperbark.output.BatchView;
import paperbark.output.CaseFile;
import paperbark.value.SchemeName;

/**
 * The figures of a batch.
 *
 * @param jobs jobs read and not cancelled
 * @param cancelled jobs of the register that are cancelled
 * @param leftOut rows of the register that were taken for no job
 * @param packs packs made
 * @param heldJobs jobs with a paper held back
 * @param certificates certificates on papers that go out, by scheme
 * @param heldCertificates certificates on papers that are held, by scheme
 */
@RecordBuilder
public record Counts(
        int jobs,
        int cancelled,
        int leftOut,
        int packs,
        int heldJobs,
        Map<SchemeName, Integer> certificates,
        Map<SchemeName, Integer> heldCertificates) {
    /** Nothing done. */
    public static final Counts NONE = new Counts(0, 0, 0, 0, 0, Map.of(), Map.of());

    /** Counts the cases of a batch. */
    static Counts of(BatchView view, int packs) {
        return of(view.cases())
                .with(
                        BatchView.cancelled(view.findings()),
                        BatchView.leftOut(view.findings()),
                        packs);
    }

    /** Counts some cases. */
    static Counts of(List<CaseFile> cases) {
        Map<SchemeName, Integer> certificates = new EnumMap<>(SchemeName.class);
        Map<SchemeName, Integer> held = new EnumMap<>(SchemeName.class);
        for (CaseFile file : cases) {
            List<Entitlement> claimable = file.claimable();
            for (Entitlement entitlement : file.entitlements().all()) {
                int count = entitlement.certificates().orElse(0);
                if (count > 0) {
                    (claimable.contains(entitlement) ? certificates : held)
                            .merge(entitlement.scheme(), count, Integer::sum);
                }
            }
        }
        int heldJobs = (int) cases.stream().filter(CaseFile::isHeld).count();
        return new Counts(
                cases.size(), 0, 0, 0, heldJobs, Map.copyOf(certificates), Map.copyOf(held));
    }

    /** These and those of further cases. */
    Counts plus(Counts more) {
        return CountsBuilder.builder(this)
                .jobs(jobs + more.jobs)
                .heldJobs(heldJobs + more.heldJobs)
                .certificates(sums(certificates, more.certificates))
                .heldCertificates(sums(heldCertificates, more.heldCertificates))
                .build();
    }

    private static Map<SchemeName, Integer> sums(
            Map<SchemeName, Integer> some, Map<SchemeName, Integer> more) {
        Map<SchemeName, Integer> sums = new EnumMap<>(SchemeName.class);
        sums.putAll(some);
        more.forEach((scheme, count) -> sums.merge(scheme, count, Integer::sum));
        return Map.copyOf(sums);
    }

    /** The same with what is no case. */
    Counts with(int cancelledJobs, int rowsLeftOut, int packsMade) {
        return CountsBuilder.builder(this)
                .cancelled(cancelledJobs)
                .leftOut(rowsLeftOut)
                .packs(packsMade)
                .build();
    }
}
