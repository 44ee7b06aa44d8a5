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
 * @param shares whose it is, where it was taken in
 * @param ending what became of it
 * @param claim the claim as it stands after it, where one was found
 * @param how by what the claim was found
 * @param reason what the buyer says of it
 */
public record SettledLine(
        int row,
        LocalDate day,
        Money amount,
        Optional<Shares> shares,
        Ending ending,
        Optional<ClaimState> claim,
        String how,
        String reason) {

    /** What can become of a line. */
    public enum Ending {
        /** The claim is paid to the cent. */
        MATCHED("matched"),
        /** Less came than was expected. */
        SHORT("short", true),
        /** More came than was expected. */
        OVER("over", true),
        /** The owner was paid, as agreed; nothing of it is the firm's. */
        OWNER_PAID("owner paid"),
        /** Money was taken back. */
        REVERSED("reversed", true),
        /** The buyer lodged the claim. */
        LODGED("lodged"),
        /** The scheme's regulator failed the claim. */
        FAILED("failed", true),
        /** No claim, or more than one, fits. */
        UNKNOWN("unknown", true),
        /** The line is of a day to come; nothing was changed. */
        TO_COME("to come", true),
        /** The claim was paid in full before; nothing was changed. */
        DUPLICATE("duplicate", true),
        /** The very line was taken in before; nothing was changed. */
        SEEN("seen before");

        private final String word;
        private final boolean needsPerson;

        Ending(String word) {
            this(word, false);
        }

        Ending(String word, boolean needsPerson) {
            this.word = word;
            this.needsPerson = needsPerson;
        }

        /** The word for people. */
        public String word() {
            return word;
        }

        /** Whether somebody has to ask, compare or mend. */
        public boolean needsPerson() {
            return needsPerson;
        }
    }

    /** What of the amount is the firm's, where the line was taken in. */
    public Optional<Money> firms() {
        return shares.map(Shares::firms);
    }

    /** What of the amount is the owner's, where the line was taken in. */
    public Optional<Money> owners() {
        return shares.map(s -> amount.minus(s.firms()).minus(s.nobodys()));
    }

    /** What of the amount is GST on top that is nobody's yet, where the line was taken in. */
    public Optional<Money> nobodys() {
        return shares.map(Shares::nobodys);
    }
}
