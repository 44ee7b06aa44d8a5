package paperbark.value;

import java.util.Optional;

/**
 * An Australian Company Number: nine digits, the last a check digit.
 *
 * <p>Rule: weigh the first eight digits by 8 to 1; the check digit is (10 - sum mod 10) mod 10.
 * Source: ASIC's published algorithm, read through a metadata registry. The check is weak: one
 * single-digit error in ten passes.
 *
 * @param digits the nine digits
 */
public record Acn(String digits) {

    /** Refuses a number that {@link #parse} would refuse. */
    public Acn {
        if (!isValid(digits)) {
            throw new IllegalArgumentException("not an ACN");
        }
    }

    /** Reads nine digits, with or without spaces, hyphens and dots. */
    public static Parsed<Acn> parse(String text) {
        Optional<String> digits = Digits.of(text);
        if (digits.isEmpty() || digits.get().length() != 9) {
            return Parsed.bad(
                    "An ACN has nine digits.",
                    "Type the nine-digit ACN as the company register shows it.");
        }
        if (!isValid(digits.get())) {
            return Parsed.bad(
                    "The check digit does not fit, so at least one digit is wrong.",
                    "Compare the ACN digit by digit with the company's papers.");
        }
        return Parsed.ok(new Acn(digits.get()));
    }

    private static boolean isValid(String digits) {
        if (!digits.matches("[0-9]{9}") || digits.equals("000000000")) {
            return false;
        }
        int sum = 0;
        for (int i = 0; i < 8; i++) {
            sum += (8 - i) * Digits.at(digits, i);
        }
        return (10 - sum % 10) % 10 == Digits.at(digits, 8);
    }

    /** As printed: {@code 000 000 019}. */
    @Override
    public String toString() {
        return digits.replaceAll("(...)(...)(...)", "$1 $2 $3");
    }
}
