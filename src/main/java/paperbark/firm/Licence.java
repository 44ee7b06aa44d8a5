package paperbark.firm;

import java.util.Optional;
import paperbark.value.DateRange;
import paperbark.value.State;
import paperbark.value.Trade;

/**
 * A licence as its holder's card shows it.
 *
 * @param trade what it is for
 * @param number as printed on the card
 * @param licenceClass its class or grade, where the card shows one
 * @param state the state whose regulator gave it
 * @param inForce first and last day
 */
public record Licence(
        Trade trade,
        String number,
        Optional<String> licenceClass,
        State state,
        DateRange inForce) {}
