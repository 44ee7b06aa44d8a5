package paperbark.job;

import java.util.Optional;
import paperbark.value.Abn;
import paperbark.value.Address;
import paperbark.value.Email;
import paperbark.value.Phone;

/**
 * Whoever owns the heater.
 *
 * @param name person or organisation
 * @param contact person to speak to, for organisations
 * @param abn for businesses
 * @param gstRegistered whether registered for GST and using the heater in business
 * @param phone daytime telephone
 * @param email e-mail
 * @param postal where letters go; the site where nothing else is said
 * @param second a second person who owns the heater and signs too
 */
public record Owner(
        Optional<String> name,
        Optional<String> contact,
        Optional<Abn> abn,
        Optional<Boolean> gstRegistered,
        Optional<Phone> phone,
        Optional<Email> email,
        Address postal,
        Optional<String> second) {

    /** All who own the heater, on one line. */
    public Optional<String> names() {
        return name.map(first -> second.map(other -> first + " and " + other).orElse(first))
                .or(() -> second);
    }
}
