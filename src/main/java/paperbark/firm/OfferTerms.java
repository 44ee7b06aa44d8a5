package paperbark.firm;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import paperbark.value.ExactMoney;
import paperbark.value.State;

/**
 * What an offer asks for and keeps back besides price, size and days.
 *
 * @param gstBasis what the price says of GST
 * @param feePerCertificate dollars kept back from each certificate
 * @param zones zones that the buyer takes; empty is all
 * @param states states that the buyer takes; empty is all
 * @param paidTo whom the buyer pays
 * @param form the assignment's template variant or form; empty takes the buyer's
 */
public record OfferTerms(
        GstBasis gstBasis,
        ExactMoney feePerCertificate,
        Set<Integer> zones,
        Set<State> states,
        PaidTo paidTo,
        Optional<String> form) {
    /** No limits, no fee for each certificate, GST on top. */
    public static final OfferTerms PLAIN =
            new OfferTerms(
                    GstBasis.PLUS,
                    new ExactMoney(BigDecimal.ZERO),
                    Set.of(),
                    Set.of(),
                    PaidTo.EITHER,
                    Optional.empty());

    /** Keeps the limits from being changed, and in order. */
    public OfferTerms {
        zones = Collections.unmodifiableSet(new TreeSet<>(zones));
        states = Collections.unmodifiableSet(new TreeSet<>(states));
    }

    /** Whether a claim can meet these and the other terms at once. */
    boolean overlap(OfferTerms other) {
        return meet(zones, other.zones)
                && meet(states, other.states)
                && (paidTo == other.paidTo
                        || paidTo == PaidTo.EITHER
                        || other.paidTo == PaidTo.EITHER);
    }

    private static <T> boolean meet(Set<T> one, Set<T> other) {
        return one.isEmpty() || other.isEmpty() || one.stream().anyMatch(other::contains);
    }
}
