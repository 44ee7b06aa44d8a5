package paperbark.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.entitlement.Schemes;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.job.Job;
import paperbark.offer.Expected;
import paperbark.value.SchemeName;

/** Which papers a job's pack holds, and which of them are held back. */
public final class PaperPlan {
    private static final String DEFAULT = "default";

    private PaperPlan() {}

    /**
     * What is wanted beside the usual papers.
     *
     * @param siteSheets whether an installed job gets a site sheet too
     * @param ownersCopies whether each assignment gets a copy for the owner
     */
    public record Extras(boolean siteSheets, boolean ownersCopies) {}

    /**
     * The papers of a job in order. Those that only repeat what the crew writes on the site sheet
     * wait until the work is done, so that nobody writes a fact twice.
     *
     * @param job the job
     * @param entitlements what it earns
     * @param findings everything noticed about it
     * @param expected the offers taken, which decide the buyers' forms
     * @param extras what is wanted beside the usual papers
     */
    public static List<Paper> of(
            Job job,
            Entitlements entitlements,
            List<Finding> findings,
            List<Expected> expected,
            Extras extras) {
        List<Paper> papers = new ArrayList<>();
        papers.add(paper(PaperKind.COVER, DEFAULT, findings));
        if (job.hasClaims()) {
            papers.add(paper(PaperKind.WORKING, DEFAULT, findings));
        }
        if (job.replacesHeater() && !job.isBooked()) {
            papers.add(paper(PaperKind.OLD_HEATER, DEFAULT, findings));
        }
        if (extras.siteSheets() || job.isBooked()) {
            papers.add(paper(PaperKind.SITE_SHEET, DEFAULT, findings));
        }
        if (!job.isBooked()) {
            papers.add(paper(PaperKind.WARRANTY, warranty(job), findings));
        }
        for (SchemeName scheme : SchemeName.values()) {
            if (job.claim(scheme).claimed()) {
                Paper assignment =
                        paper(PaperKind.of(scheme), form(scheme, job, expected), findings);
                papers.add(assignment);
                if (extras.ownersCopies() && !assignment.isBlocked()) {
                    papers.add(paper(PaperKind.copyOf(scheme), assignment.variant(), findings));
                }
            }
        }
        if (entitlements.all().stream().anyMatch(Entitlement::needsDeclarations)) {
            papers.add(paper(PaperKind.DECLARATIONS, DEFAULT, findings));
        }
        papers.add(paper(PaperKind.HANDOVER, DEFAULT, findings));
        if (job.hasClaims() && job.payment().fullPrice().isPresent()) {
            papers.add(paper(PaperKind.BENEFIT, DEFAULT, findings));
        }
        return papers;
    }

    private static String warranty(Job job) {
        return job.heater().maker().flatMap(m -> m.warrantyVariant()).orElse(DEFAULT);
    }

    private static String form(SchemeName scheme, Job job, List<Expected> expected) {
        Optional<Expected> taken = expected.stream().filter(e -> e.scheme() == scheme).findFirst();
        return taken.flatMap(e -> e.offer().terms().form())
                .or(
                        () ->
                                taken.map(Expected::buyer)
                                        .or(() -> job.claim(scheme).buyer())
                                        .map(buyer -> buyer.forms().get(scheme)))
                .orElseGet(() -> Schemes.KNOWN.of(scheme).fallbackPaper());
    }

    private static Paper paper(PaperKind kind, String variant, List<Finding> findings) {
        List<Finding> stops =
                kind.concern()
                        .map(concern -> findings.stream().filter(f -> holds(f, concern)).toList())
                        .orElse(List.of());
        return new Paper(kind, variant, stops);
    }

    private static boolean holds(Finding finding, Concern concern) {
        return finding.holds().contains(concern) || finding.holds().contains(Concern.JOB);
    }
}
