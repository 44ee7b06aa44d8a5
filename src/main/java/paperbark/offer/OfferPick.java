package paperbark.offer;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import paperbark.firm.Buyer;
import paperbark.firm.MoneyPolicy;
import paperbark.firm.OfferPolicy;

/**
 * Which of several offers is taken.
 *
 * @param chosen the one taken; empty where the fixed buyer's is not among them, or there is none
 * @param runnerUp the next by the same policy from another buyer
 * @param how why
 */
record OfferPick(Optional<Quote> chosen, Optional<Quote> runnerUp, String how) {

    /**
     * Picks.
     *
     * @param ranked the offers that can be taken, the one worth most first
     * @param fixed the buyer fixed in the register
     * @param policy the firm's policy
     */
    static OfferPick of(List<Quote> ranked, Optional<Buyer> fixed, MoneyPolicy policy) {
        if (fixed.isPresent()) {
            Optional<Quote> taken = first(ranked, isOf(fixed.get().name()));
            return new OfferPick(taken, next(ranked, taken), "fixed in the register");
        }
        return switch (policy.choice()) {
            case HIGHEST_NET -> best(ranked, OfferPolicy.HIGHEST_NET);
            case QUICKEST ->
                    best(
                            ranked.stream().sorted(Quote.QUICKEST_FIRST).toList(),
                            OfferPolicy.QUICKEST);
            case PREFERRED -> preferred(ranked, policy);
        };
    }

    private static OfferPick best(List<Quote> inOrder, OfferPolicy policy) {
        Optional<Quote> taken = inOrder.stream().findFirst();
        return new OfferPick(taken, next(inOrder, taken), policy.word());
    }

    /** The preferred buyer loses to one that is better by the margin or more. */
    private static OfferPick preferred(List<Quote> ranked, MoneyPolicy policy) {
        String name = policy.preferredBuyer().orElse("");
        Optional<Quote> own = first(ranked, isOf(name));
        if (own.isEmpty()) {
            OfferPick best = best(ranked, OfferPolicy.HIGHEST_NET);
            return new OfferPick(
                    best.chosen, best.runnerUp, "highest net; the preferred buyer has no offer");
        }
        Quote best = ranked.get(0);
        boolean beaten =
                !isOf(name).test(best)
                        && best.worth().minus(own.get().worth()).compareTo(policy.preferredMargin())
                                >= 0;
        Optional<Quote> taken = beaten ? Optional.of(best) : own;
        return new OfferPick(
                taken,
                next(ranked, taken),
                beaten
                        ? "better than the preferred buyer by "
                                + policy.preferredMargin()
                                + " or more"
                        : OfferPolicy.PREFERRED.word());
    }

    private static Optional<Quote> next(List<Quote> inOrder, Optional<Quote> taken) {
        return taken.flatMap(t -> first(inOrder, isOf(t.offer().buyer()).negate()));
    }

    private static Optional<Quote> first(List<Quote> inOrder, Predicate<Quote> wanted) {
        return inOrder.stream().filter(wanted).findFirst();
    }

    private static Predicate<Quote> isOf(String buyer) {
        return q -> q.offer().buyer().equalsIgnoreCase(buyer.strip());
    }
}
