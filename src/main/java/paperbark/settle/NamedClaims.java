package paperbark.settle;

import java.util.List;
import java.util.Optional;
import paperbark.ledger.AdviceBook;
import paperbark.ledger.ClaimState;
import paperbark.ledger.JobOutcome;

/**
 * The claims that a person means by a name, which is that of a claim or the number of a job.
 *
 * @param standing those that can still be lodged or paid
 * @param whyNone a sentence that says why there is none; empty where there is one
 */
record NamedClaims(List<ClaimState> standing, Optional<String> whyNone) {

    /** Looks for them in the ledger. */
    static NamedClaims of(String name, AdviceBook book) {
        List<ClaimState> named = book.byReference(name);
        List<ClaimState> all = named.isEmpty() ? book.byJob(name) : named;
        List<ClaimState> standing = all.stream().filter(ClaimState::active).toList();
        if (!standing.isEmpty()) {
            return new NamedClaims(standing, Optional.empty());
        }
        String why =
                all.isEmpty()
                        ? withoutClaim(name, book)
                        : fallenAway(name, all.get(all.size() - 1).job(), book);
        return new NamedClaims(standing, Optional.of(why));
    }

    /**
     * A claim falls away with its job, or because the job came again and is held or only booked.
     */
    private static String fallenAway(String name, String job, AdviceBook book) {
        boolean claimsNothing =
                book.byHand().outcome(job).filter(o -> o != JobOutcome.ISSUED).isPresent();
        if (claimsNothing && !book.byHand().isWithdrawn(job)) {
            return withoutClaim(job, book);
        }
        return name
                + " was withdrawn, so that nothing is to be lodged or paid for it. Prepare the job again if"
                + " that was a mistake.";
    }

    private static String withoutClaim(String name, AdviceBook book) {
        Optional<JobOutcome> outcome = book.byHand().outcome(name);
        if (outcome.isEmpty()) {
            return "The ledger knows no claim and no job " + name + ". Look at its number again.";
        }
        return switch (outcome.get()) {
            case HELD ->
                    "Job "
                            + name
                            + " is held, and nothing is claimed for it. Mend what its findings name and prepare"
                            + " it again.";
            case BOOKED ->
                    "Job "
                            + name
                            + " is only booked, and nothing is claimed for it. Prepare it again once it is"
                            + " installed.";
            case ISSUED -> "Nothing was claimed for job " + name + ".";
        };
    }
}
