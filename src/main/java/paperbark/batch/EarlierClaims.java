package paperbark.batch;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.ledger.ClaimState;
import paperbark.ledger.Keys;
import paperbark.offer.Standing;
import paperbark.output.CaseFile;
import paperbark.output.Receivable;
import paperbark.value.Money;

/**
 * The claims of earlier batches as a batch tells of them: what is still to come, and what came or
 * failed lately.
 *
 * @param claims all that the ledger knows
 * @param today the day of the batch
 */
record EarlierClaims(List<ClaimState> claims, LocalDate today) {
    // A quarter: what was paid before is in an earlier activity statement.
    private static final int PAID_DAYS = 92;

    /**
     * What there is to tell beside the jobs of the batch, longest due first. The claims that it
     * takes away or makes anew are told by the batch itself.
     *
     * @param cases the jobs of the batch
     * @param replaced keys of other jobs whose place one of them takes
     */
    List<Receivable> beside(List<CaseFile> cases, Set<String> replaced) {
        Map<String, CaseFile> now = new HashMap<>();
        cases.stream()
                .filter(file -> !file.isTwice())
                .forEach(file -> now.put(Keys.job(file.job().reference()), file));
        return claims.stream()
                .filter(c -> !replaced.contains(Keys.job(c.job())))
                .filter(c -> stays(c, Optional.ofNullable(now.get(Keys.job(c.job())))))
                .filter(c -> c.isOpen() || c.failed().isPresent() || !c.lodged() || isRecent(c))
                .map(EarlierClaims::receivable)
                .sorted(Comparator.comparing(Receivable::due))
                .toList();
    }

    /**
     * Whether a claim is as it was once the job has come again: the buyer has it, as it was made.
     */
    private static boolean stays(ClaimState claim, Optional<CaseFile> again) {
        return again.map(file -> file.standing(claim.scheme()))
                .map(s -> claim.isWithBuyer() && (s == Standing.DUE || s == Standing.HELD))
                .orElse(true);
    }

    /** What was paid lately is still of interest; what was paid long ago would bury the rest. */
    private boolean isRecent(ClaimState claim) {
        return claim.paidOn().filter(d -> d.isAfter(today.minusDays(PAID_DAYS))).isPresent();
    }

    private static Receivable receivable(ClaimState claim) {
        return new Receivable(
                claim.job(),
                claim.scheme(),
                claim.buyer(),
                claim.certificates(),
                claim.failed().isPresent() ? Money.ZERO : claim.expected(),
                claim.due().orElse(claim.claimedOn()),
                claim.received(),
                state(claim),
                claim.lodgeBy());
    }

    private static String state(ClaimState claim) {
        if (claim.failed().isPresent()) {
            return claim.failed().get().inWords();
        }
        if (!claim.isOpen()) {
            return claim.expected().isZero() ? "the owner is paid" : "paid";
        }
        if (!claim.received().isZero()) {
            return "part paid";
        }
        return claim.lodged() ? "lodged" : "not known to be lodged";
    }
}
