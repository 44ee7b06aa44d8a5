package paperbark.firm;

import java.util.Optional;
import paperbark.value.Address;
import paperbark.value.Email;
import paperbark.value.Phone;

/**
 * A maker of water heaters, as its warranty papers name it.
 *
 * @param name as in the product table
 * @param address for warranty claims
 * @param phone for warranty claims
 * @param email for warranty claims
 * @param claimCosts who bears the expense of a claim on the maker's warranty, in words for the
 *     owner
 * @param warrantyVariant name of the warranty registration's template variant; empty takes the
 *     default
 * @param entries name of the list of what is typed or sent to the maker, where it takes entries
 */
public record Maker(
        String name,
        Address address,
        Optional<Phone> phone,
        Optional<Email> email,
        Optional<String> claimCosts,
        Optional<String> warrantyVariant,
        Optional<String> entries) {}
