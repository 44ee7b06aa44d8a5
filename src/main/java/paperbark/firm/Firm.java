package paperbark.firm;

import java.util.Optional;
import paperbark.value.Abn;
import paperbark.value.AccountNumber;
import paperbark.value.Acn;
import paperbark.value.Address;
import paperbark.value.Bsb;
import paperbark.value.Email;
import paperbark.value.Phone;

/**
 * The installing firm.
 *
 * @param name legal name
 * @param abn business number
 * @param acn company number, for companies
 * @param gstRegistered whether the firm is registered for GST
 * @param address business address, also for warranty claims
 * @param phone office telephone
 * @param afterHours number to ring outside office hours
 * @param email office e-mail
 * @param workmanshipYears years of the firm's own warranty on its work
 * @param claimCosts who bears the expense of a claim on that warranty, in words for the owner
 * @param ownersCopies whether an owner's copy of each assignment is printed, instead of the owner
 *     taking a photograph
 * @param fillable whether booked jobs get their site sheet with live fields too
 * @param accountName name of the account that buyers pay to
 * @param bsb branch of that account
 * @param account number of that account
 * @param money how it wants its money worked out
 */
public record Firm(
        String name,
        Abn abn,
        Optional<Acn> acn,
        boolean gstRegistered,
        Address address,
        Optional<Phone> phone,
        Optional<Phone> afterHours,
        Optional<Email> email,
        Optional<Integer> workmanshipYears,
        Optional<String> claimCosts,
        boolean ownersCopies,
        boolean fillable,
        Optional<String> accountName,
        Optional<Bsb> bsb,
        Optional<AccountNumber> account,
        MoneyPolicy money) {}
