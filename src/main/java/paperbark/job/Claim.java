package paperbark.job;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.Optional;
import paperbark.firm.Buyer;
import paperbark.value.Money;

/**
 * What the register says about claiming under one scheme.
 *
 * @param claimed whether certificates are to be assigned
 * @param buyer the buyer fixed in the register; empty leaves the choice to the offers
 * @param declaredZone zone that the register names
 * @param declaredCount number of certificates that the register names
 * @param benefit what the owner gets, in dollars
 */
@RecordBuilder
public record Claim(
        boolean claimed,
        Optional<Buyer> buyer,
        Optional<Integer> declaredZone,
        Optional<Integer> declaredCount,
        Optional<Money> benefit) {

    /** Nothing is claimed. */
    public static final Claim NONE =
            new Claim(
                    false, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /** What the owner gets for it; nothing where nothing is claimed or said. */
    public Money given() {
        return claimed ? benefit.orElse(Money.ZERO) : Money.ZERO;
    }
}
