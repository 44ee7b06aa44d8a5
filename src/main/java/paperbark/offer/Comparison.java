package paperbark.offer;

import java.util.List;
import java.util.Optional;
import paperbark.entitlement.Step;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * All offers for one claim, side by side.
 *
 * @param scheme which certificates
 * @param certificates how many
 * @param ranked the offers that the claim can take, the one worth most to the firm first
 * @param chosen the one taken; empty where none can be
 * @param runnerUp the next by the same policy from another buyer
 * @param how why this one: fixed in the register, or the firm's policy
 * @param fixed whether the register fixed the buyer
 * @param leftOut the offers that the claim cannot take
 */
public record Comparison(
        SchemeName scheme,
        int certificates,
        List<Quote> ranked,
        Optional<Quote> chosen,
        Optional<Quote> runnerUp,
        String how,
        boolean fixed,
        List<LeftOut> leftOut) {

    /** Keeps the lists from being changed. */
    public Comparison {
        ranked = List.copyOf(ranked);
        leftOut = List.copyOf(leftOut);
    }

    /** What the choice is worth beyond the runner-up; below zero where it is worth less. */
    public Optional<Money> difference() {
        return chosen.flatMap(c -> runnerUp.map(r -> c.worth().minus(r.worth())));
    }

    /** What the best offer would be worth beyond the choice; zero where the best was chosen. */
    public Money costOfChoice() {
        return chosen.map(c -> ranked.get(0).worth().minus(c.worth())).orElse(Money.ZERO);
    }

    /** The working: one step an offer, then the choice. */
    public List<Step> steps() {
        return ComparisonSteps.of(this);
    }
}
