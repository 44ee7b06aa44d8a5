package paperbark.output.journal;

import java.util.Optional;

/**
 * An earlier entry that a journal takes back.
 *
 * @param batch whose journal has it
 * @param entry the entry as it stands there; empty where that batch is not here, so that only a
 *     person can take back what it may have booked
 */
public record TakenBack(String batch, Optional<Booked> entry) {

    /** The entry that takes it back. */
    Optional<Booked> back() {
        return entry.map(e -> e.back(batch));
    }
}
