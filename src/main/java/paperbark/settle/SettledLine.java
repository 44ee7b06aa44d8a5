package paperbark.settle;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.ledger.ClaimState;
import paperbark.value.Money;

/**
 * What became of one line of an advice.
 *
 * @param row row of the advice
 * @param day day of the payment or notice
 * @param amount what was paid
 * @param ending what became of it
 * @param claim the claim as it stands after it, where one was found
 * @param how by what the claim was found
 * @param reason what the buyer says of it
 */
public record SettledLine(
        int row,
        LocalDate day,
        Money amount,
        Ending ending,
        Optional<ClaimState> claim,
        String how,
        String reason) {

    /** What can become of a line. */
    public enum Ending {
        /** The claim is paid to the cent. */
        MATCHED("matched"),
        /** Less came than was expected. */
        SHORT("short"),
        /** More came than was expected. */
        OVER("over"),
        /** The owner was paid, as agreed; nothing of it is the firm's. */
        OWNER_PAID("owner paid"),
        /** Money was taken back. */
        REVERSED("reversed"),
        /** The buyer lodged the claim. */
        LODGED("lodged"),
        /** The scheme's regulator failed the claim. */
        FAILED("failed"),
        /** No claim, or more than one, fits. */
        UNKNOWN("unknown"),
        /** The claim was paid in full before; nothing was changed. */
        DUPLICATE("duplicate"),
        /** The very line was taken in before; nothing was changed. */
        SEEN("seen before");

        private final String word;

        Ending(String word) {
            this.word = word;
        }

        /** The word for people. */
        public String word() {
            return word;
        }
    }
}
