package paperbark.ledger;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.value.Money;

/**
 * What a buyer is expected to pay for a claim.
 *
 * @param toFirm money to the firm, never below nothing
 * @param toOwner money to the owner, which an advice may tell of and the firm never gets
 * @param firmGst GST that the firm owes on its part once it has come
 * @param due day of payment when lodged on the day of the batch
 */
public record Promise(Money toFirm, Money toOwner, Money firmGst, Optional<LocalDate> due) {
    /** No buyer is chosen, so nothing is expected. */
    public static final Promise NONE =
            new Promise(Money.ZERO, Money.ZERO, Money.ZERO, Optional.empty());

    /** Refuses a promise below nothing. */
    public Promise {
        if (toFirm.isNegative() || toOwner.isNegative()) {
            throw new IllegalArgumentException("nobody expects less than nothing");
        }
    }
}
