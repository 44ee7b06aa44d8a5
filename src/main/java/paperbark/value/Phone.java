package paperbark.value;

import com.google.i18n.phonenumbers.NumberParseException;
import com.google.i18n.phonenumbers.PhoneNumberUtil;
import com.google.i18n.phonenumbers.PhoneNumberUtil.PhoneNumberFormat;
import com.google.i18n.phonenumbers.Phonenumber.PhoneNumber;
import java.util.regex.Pattern;

/**
 * A telephone number that can be rung from Australia. The state is never inferred: areas do not
 * follow borders.
 *
 * @param full as written in Australia, e.g. {@code 0491 570 156} or {@code (03) 5550 1234}; with +
 *     and country code elsewhere
 */
public record Phone(String full) {
    private static final PhoneNumberUtil NUMBERS = PhoneNumberUtil.getInstance();
    private static final Pattern HERE =
            Pattern.compile("[2-578][0-9]{8}|13[0-9]{4}|1300[0-9]{6}|1800[0-9]{6}");

    /** Reads a number in national or international form. */
    public static Parsed<Phone> parse(String text) {
        try {
            PhoneNumber number = NUMBERS.parse(text, "AU");
            boolean possible = NUMBERS.isPossibleNumber(number);
            if (possible && number.getCountryCode() != 61 && NUMBERS.isValidNumber(number)) {
                return Parsed.ok(
                        new Phone(NUMBERS.format(number, PhoneNumberFormat.INTERNATIONAL)));
            }
            // The ranges kept for fiction count as valid in the library's metadata only in part, so
            // form decides.
            String national = String.valueOf(number.getNationalNumber());
            if (possible && number.getCountryCode() == 61 && HERE.matcher(national).matches()) {
                return Parsed.ok(new Phone(NUMBERS.format(number, PhoneNumberFormat.NATIONAL)));
            }
        } catch (NumberParseException e) {
            return Parsed.bad(
                    "The text is not a telephone number.",
                    "Type the number with its area code, e.g. 03 5550 1234.");
        }
        return Parsed.bad(
                "No Australian telephone number has this form.",
                "Type the number with its area code, e.g. 03 5550 1234.");
    }

    /** Masked but for the last three digits. */
    @Override
    public String toString() {
        return "…" + full.substring(Math.max(0, full.length() - 3));
    }
}
