package paperbark.output;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.job.Job;
import paperbark.job.Stage;
import paperbark.offer.Standing;
import paperbark.value.SchemeName;

/**
 * Decides how a job's claims stand, from what it claims, what it earns and what stops it. What the
 * buyer has is money to come, whatever stops a new paper of it.
 */
record Claiming(
        Job job,
        Entitlements entitlements,
        List<Finding> findings,
        Set<SchemeName> withBuyer,
        LocalDate today) {

    Standing standing(SchemeName scheme) {
        if (!job.stage().claims() || !job.claim(scheme).claimed()) {
            return Standing.NOT_CLAIMED;
        }
        if (!stops(scheme).isEmpty()) {
            return withBuyer.contains(scheme) && job.doneOn(today).isPresent()
                    ? Standing.DUE
                    : Standing.HELD;
        }
        boolean nothing =
                entitlements.of(scheme).flatMap(Entitlement::certificates).equals(Optional.of(0));
        if (nothing) {
            return Standing.NOTHING;
        }
        return job.stage() == Stage.INSTALLED ? Standing.DUE : Standing.BOOKED;
    }

    /** Whether another row has the job's number. */
    boolean isTwice() {
        return findings.stream().anyMatch(f -> f.code() == FindingCode.JOB_TWICE);
    }

    /**
     * Papers as they are, but for a statement of benefit of claims that are all held, and a
     * handover of a heater that is yet to be put in on the day that it would tell.
     */
    List<Paper> hold(List<Paper> papers) {
        List<Finding> early =
                findings.stream()
                        .filter(f -> f.stops() && f.code() == FindingCode.DATE_IN_FUTURE)
                        .toList();
        return benefit(papers).stream()
                .map(p -> p.kind() == PaperKind.HANDOVER ? p.heldBy(early) : p)
                .toList();
    }

    private List<Paper> benefit(List<Paper> papers) {
        List<SchemeName> claimed =
                Arrays.stream(SchemeName.values()).filter(s -> job.claim(s).claimed()).toList();
        if (claimed.stream().anyMatch(s -> standing(s) != Standing.HELD)) {
            return List.copyOf(papers);
        }
        List<Finding> stops = claimed.stream().flatMap(s -> stops(s).stream()).distinct().toList();
        return papers.stream()
                .map(p -> p.kind() == PaperKind.BENEFIT && !p.isBlocked() ? p.heldBy(stops) : p)
                .toList();
    }

    private List<Finding> stops(SchemeName scheme) {
        Optional<Concern> concern = PaperKind.of(scheme).concern();
        return findings.stream()
                .filter(
                        f ->
                                f.holds().contains(Concern.JOB)
                                        || concern.filter(f.holds()::contains).isPresent())
                .toList();
    }
}
