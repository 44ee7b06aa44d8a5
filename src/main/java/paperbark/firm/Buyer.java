package paperbark.firm;

import java.util.Map;
import java.util.Optional;
import paperbark.value.Abn;
import paperbark.value.Address;
import paperbark.value.Email;
import paperbark.value.Phone;
import paperbark.value.SchemeName;

/**
 * A business that takes the assignment of certificates.
 *
 * @param name legal or trading name
 * @param abn business number
 * @param registrations its number by scheme: as registered agent for STCs, as accredited person for
 *     VEECs
 * @param address where papers go
 * @param phone for questions
 * @param email where scanned papers go
 * @param forms name of the assignment's template variant by scheme; a scheme that is absent takes
 *     the default
 * @param entries name of the list of what is typed or sent to the buyer, where it takes entries
 * @param own whether it is the firm itself, which then acquires the right
 */
public record Buyer(
        String name,
        Optional<Abn> abn,
        Map<SchemeName, String> registrations,
        Address address,
        Optional<Phone> phone,
        Optional<Email> email,
        Map<SchemeName, String> forms,
        Optional<String> entries,
        boolean own) {

    /** Keeps registrations and forms from being changed. */
    public Buyer {
        registrations = Map.copyOf(registrations);
        forms = Map.copyOf(forms);
    }
}
