package paperbark.ledger;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * A claim and what became of it up to a day.
 *
 * @param id number in the ledger
 * @param job the firm's job number
 * @param scheme which certificates
 * @param buyer who pays; empty text where none was chosen
 * @param certificates how many
 * @param installedOn day of the installation
 * @param lodgeBy last day on which the certificates can be created
 * @param expected money to the firm
 * @param toOwner money to the owner, which never comes to the firm
 * @param firmGst GST that the firm owes on what is expected, once it has come
 * @param due day on which it should be there; empty where no offer was taken, so that no price is
 *     known
 * @param active whether it stands; a corrected claim is withdrawn
 * @param batch the batch that claimed it
 * @param claimedOn day of that batch
 * @param lodged whether an advice said that it was lodged, paid or failed
 * @param failed that the scheme's regulator failed it, where it did and nothing was paid since
 * @param received money received, reversals taken off
 * @param paidOn day of the latest payment
 */
public record ClaimState(
        long id,
        String job,
        SchemeName scheme,
        String buyer,
        int certificates,
        LocalDate installedOn,
        Optional<LocalDate> lodgeBy,
        Money expected,
        Money toOwner,
        Money firmGst,
        Optional<LocalDate> due,
        boolean active,
        String batch,
        LocalDate claimedOn,
        boolean lodged,
        Optional<Failed> failed,
        Money received,
        Optional<LocalDate> paidOn) {

    /** The name that the claim has on its papers. */
    public String reference() {
        return ClaimEntry.reference(job, scheme);
    }

    /**
     * What is still to come; nothing for a failed claim. What was paid too much is no debt less.
     */
    public Money outstanding() {
        return beyondNothing(expected.minus(received));
    }

    /** What came beyond what was expected. */
    private Money overpaid() {
        return beyondNothing(received.minus(expected));
    }

    private Money beyondNothing(Money difference) {
        return failed.isPresent() || !active ? Money.ZERO : difference.orNothing();
    }

    /** The same in words: {@code $105.80 still to come}. */
    public String balance() {
        return overpaid().isZero()
                ? outstanding() + " still to come"
                : overpaid() + " more than expected";
    }

    /**
     * Whether the buyer has it: it stands, was lodged and has not failed since. What failed is with
     * nobody, and the next version of its job takes its place.
     */
    public boolean isWithBuyer() {
        return active && lodged && failed.isEmpty();
    }

    /** Whether it stands, and it is not known to be lodged or failed since. */
    public boolean isUnlodged() {
        return active && !isWithBuyer();
    }

    /** Whether somebody has to lodge it: it is not lodged, and on that day it still can be. */
    public boolean isToLodge(LocalDate day) {
        return isUnlodged() && !isTooLate(day);
    }

    /** Whether it is not lodged, and on that day its certificates can be created no longer. */
    public boolean isTooLate(LocalDate day) {
        return isUnlodged() && lodgeBy.filter(last -> last.isBefore(day)).isPresent();
    }

    /** Whether money is still to come. */
    public boolean isOpen() {
        return outstanding().compareTo(Money.ZERO) > 0;
    }
}
