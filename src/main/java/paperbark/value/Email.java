package paperbark.value;

import org.apache.commons.validator.routines.EmailValidator;

/**
 * An e-mail address.
 *
 * @param full the address
 */
public record Email(String full) {

    /** Reads one address. */
    public static Parsed<Email> parse(String text) {
        if (EmailValidator.getInstance().isValid(text)) {
            return Parsed.ok(new Email(text));
        }
        return Parsed.bad(
                "The text is not an e-mail address.", "Type one address such as name@example.com.");
    }

    /** Masked, so that no log or message can give it away. */
    @Override
    public String toString() {
        return "…@…";
    }
}
