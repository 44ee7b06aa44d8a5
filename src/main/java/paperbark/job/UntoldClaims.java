package paperbark.job;

import java.util.ArrayList;
import java.util.List;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.value.SchemeName;

/**
 * Lists that tell of certificates, such as who takes them, and nowhere say that they are claimed.
 * Nothing is claimed that no row claims.
 */
final class UntoldClaims {
    private UntoldClaims() {}

    /** A finding for each scheme that a list tells of and no job of it claims. */
    static List<Finding> of(List<Job> jobs) {
        List<Finding> findings = new ArrayList<>();
        for (SchemeName scheme : SchemeName.values()) {
            Field claim = Field.of(scheme, ClaimFact.CLAIM);
            List<Job> telling =
                    jobs.stream()
                            .filter(job -> job.stage().claims())
                            .filter(job -> tells(job.claims().get(scheme)))
                            .toList();
            boolean told =
                    jobs.stream()
                            .anyMatch(
                                    job ->
                                            job.claims().get(scheme).claimed()
                                                    || job.origin().columns().containsKey(claim)
                                                    || job.origin()
                                                            .columns()
                                                            .containsKey(Field.SCHEME));
            if (!told && !telling.isEmpty()) {
                findings.add(finding(scheme, claim, telling));
            }
        }
        return findings;
    }

    private static boolean tells(Claim claim) {
        return claim.buyer().isPresent()
                || claim.declaredCount().isPresent()
                || claim.benefit().isPresent();
    }

    private static Finding finding(SchemeName scheme, Field claim, List<Job> telling) {
        int count = telling.size();
        return Finding.of(
                FindingCode.CLAIM_UNTOLD,
                new Place.InFile(telling.get(0).origin().file()),
                "No job claims %ss, because the register has no column for \"%s\"; %s of buyer, number or benefit of %ss."
                        .formatted(
                                scheme.word(),
                                claim.label(),
                                count == 1 ? "1 job tells" : count + " jobs tell",
                                scheme.word()),
                "Add a column that says yes or no, or the line \"%s,,yes\" to the columns table if every job claims them."
                        .formatted(claim.key()));
    }
}
