package paperbark.ledger;

import java.time.LocalDate;
import paperbark.value.Days;

/**
 * That the scheme's regulator failed a claim.
 *
 * @param on the day that the advice gives
 * @param reason why, as the buyer says it; empty text where they do not
 */
public record Failed(LocalDate on, String reason) {

    /** In words: {@code failed on 25 Nov 2026, serial not on the photograph}. */
    public String inWords() {
        return "failed on " + Days.show(on) + (reason.isEmpty() ? "" : ", " + reason);
    }
}
