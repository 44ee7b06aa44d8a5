package paperbark.firm;

import paperbark.value.DateRange;
import paperbark.value.State;
import paperbark.value.Trade;

/**
 * A licence as its holder's card shows it.
 *
 * @param trade what it is for
 * @param number as printed on the card
 * @param state the state whose regulator gave it
 * @param inForce first and last day
 */
public record Licence(Trade trade, String number, State state, DateRange inForce) {}
