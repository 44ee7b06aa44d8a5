package paperbark.ledger;

import java.time.LocalDate;

/**
 * That the newest version of a job was booked out, or that another job takes its place.
 *
 * @param day when
 * @param reason why
 * @param register the list that called it off; empty text where a person did, or another job takes
 *     its place
 */
public record Withdrawn(LocalDate day, String reason, String register) {
    /** Whether a list said that the job is cancelled. */
    public boolean isByList() {
        return !register.isEmpty();
    }
}
