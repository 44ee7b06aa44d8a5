package paperbark.job;

import java.util.Optional;
import paperbark.value.AccountNumber;
import paperbark.value.Bsb;
import paperbark.value.Money;

/**
 * Prices and how the owner gets the benefit.
 *
 * @param fullPrice price of heater and installation with GST, before any certificate discount
 * @param coPayment what the owner paid for the product out of their own pocket, with GST
 * @param form in what form the owner gets the benefit
 * @param accountName name of the owner's account, where the owner is paid
 * @param bsb its branch
 * @param account its number
 */
public record Payment(
        Optional<Money> fullPrice,
        Optional<Money> coPayment,
        Optional<BenefitForm> form,
        Optional<String> accountName,
        Optional<Bsb> bsb,
        Optional<AccountNumber> account) {

    /** Whether the value of the certificates is taken off the price. */
    public boolean isDiscount() {
        return is(BenefitForm.DISCOUNT);
    }

    /** Whether it is paid to the owner's account. */
    public boolean isPaidToOwner() {
        return is(BenefitForm.PAYMENT);
    }

    /** Whether the owner gets it in another way, which is described by hand. */
    public boolean isOther() {
        return is(BenefitForm.OTHER);
    }

    /** Whether the owner's account is asked for: the owner is paid, or nobody said how. */
    public boolean asksForAccount() {
        return isPaidToOwner() || form.isEmpty();
    }

    private boolean is(BenefitForm other) {
        return form.filter(f -> f == other).isPresent();
    }
}
