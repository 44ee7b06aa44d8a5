package paperbark.ledger;

import java.util.Locale;

/** What a batch did with a job. */
public enum JobOutcome {
    /** Every claim paper went out. */
    ISSUED,
    /** At least one paper is held by a stop. */
    HELD,
    /** Not installed yet: papers to write on went out, nothing is claimed. */
    BOOKED;

    /** The word in the ledger. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static JobOutcome of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
