package paperbark.output;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * A claim as the ledger knows it: what was expected of a buyer and what has come.
 *
 * @param job the firm's job number
 * @param scheme which certificates
 * @param buyer who pays
 * @param certificates how many
 * @param expected money expected by the firm
 * @param due day of payment
 * @param received what has come so far
 * @param state how it stands, in words for people
 * @param closing last safe day for creating the certificates, where known
 */
public record Receivable(
        String job,
        SchemeName scheme,
        String buyer,
        int certificates,
        Money expected,
        LocalDate due,
        Money received,
        String state,
        Optional<LocalDate> closing) {

    /** What is still to come. What was paid too much for one claim is no debt less of another. */
    public Money open() {
        return expected.minus(received).orNothing();
    }

    /** What came beyond what is expected. */
    public Money over() {
        return received.minus(expected).orNothing();
    }
}
