package paperbark.ledger;

import java.time.LocalDate;
import paperbark.value.SchemeName;

/**
 * Another job's claim that a job's own claim may collide with.
 *
 * @param kind in what they are the same
 * @param scheme of the other claim
 * @param mine the serial of this job, empty text where the site is the same
 * @param theirs the other's serial as it was read then
 * @param job the other job's number
 * @param batch the batch that claimed it, in words
 * @param day day of that batch
 */
public record Conflict(
        Kind kind,
        SchemeName scheme,
        String mine,
        String theirs,
        String job,
        String batch,
        LocalDate day) {

    /** In what two claims of different jobs are the same. */
    public enum Kind {
        /** The same serial. */
        SERIAL,
        /** A serial that is easily read for the other. */
        LOOKALIKE,
        /** The same place at the same address. */
        SITE
    }
}
