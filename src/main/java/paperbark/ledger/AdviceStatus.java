package paperbark.ledger;

import java.util.Locale;

/** What an advice says of a claim. */
public enum AdviceStatus {
    /** The buyer lodged it. */
    LODGED,
    /** Money came, or, with a negative amount, was taken back. */
    PAID,
    /** The scheme's regulator failed it. */
    FAILED;

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static AdviceStatus of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
