package paperbark.firm;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import paperbark.value.Phone;
import paperbark.value.State;
import paperbark.value.Trade;

/**
 * Somebody who installs.
 *
 * @param name as on the licence
 * @param phone where to reach them
 * @param licences all licences on file, also lapsed ones
 */
public record Person(String name, Optional<Phone> phone, List<Licence> licences) {

    /** Keeps the licences from being changed. */
    public Person {
        licences = List.copyOf(licences);
    }

    /** The licences of a trade for a state, whether in force or not. */
    public List<Licence> licences(Trade trade, State state) {
        return licences.stream().filter(l -> l.trade() == trade && l.state() == state).toList();
    }

    /** The licence of a trade for a state in force on the day. */
    public Optional<Licence> licence(Trade trade, State state, LocalDate day) {
        return licences(trade, state).stream().filter(l -> l.inForce().contains(day)).findFirst();
    }
}
