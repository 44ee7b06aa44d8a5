package paperbark.value;

import java.util.Optional;

/**
 * An Australian Business Number: 11 digits of which the first two are check digits. A right check
 * digit proves the form only, not that the number exists.
 *
 * <p>Rule: take 1 from the first digit, weigh the digits by 10, 1, 3, 5 ... 19, the sum is
 * divisible by 89. Source: the Australian Business Register's published rule, read as repeated by
 * several publishers.
 *
 * @param digits the 11 digits
 */
public record Abn(String digits) {
    private static final int[] WEIGHTS = {10, 1, 3, 5, 7, 9, 11, 13, 15, 17, 19};

    /** Refuses a number that {@link #parse} would refuse. */
    public Abn {
        if (!isValid(digits)) {
            throw new IllegalArgumentException("not an ABN");
        }
    }

    /** Reads 11 digits, with or without spaces, hyphens and dots. */
    public static Parsed<Abn> parse(String text) {
        Optional<String> digits = Digits.of(text);
        if (digits.isEmpty() || digits.get().length() != 11) {
            String count =
                    digits.map(d -> "It has " + d.length() + " digits")
                            .orElse("It holds other signs than digits");
            String hint =
                    digits.filter(d -> d.length() == 9).isPresent()
                            ? " (a 9-digit number may be the company's ACN)"
                            : "";
            return Parsed.bad(
                    count + "; an ABN has 11" + hint + ".",
                    "Type the 11-digit ABN as the Business Register shows it.");
        }
        if (!isValid(digits.get())) {
            return Parsed.bad(
                    "The check digits do not fit, so at least one digit is wrong.",
                    "Compare the ABN digit by digit with the owner's invoice or the Business Register.");
        }
        return Parsed.ok(new Abn(digits.get()));
    }

    /**
     * The company's ACN, which an ABN of a company ends with; meaningless for other owners of an
     * ABN.
     */
    public String lastNine() {
        return digits.substring(2);
    }

    private static boolean isValid(String digits) {
        // Check digits run from 11 to 99: 10 and 99 would fit the same bodies, and 99 is the one
        // given out.
        if (!digits.matches("(1[1-9]|[2-9][0-9])[0-9]{9}")) {
            return false;
        }
        int sum = -WEIGHTS[0];
        for (int i = 0; i < WEIGHTS.length; i++) {
            sum += WEIGHTS[i] * Digits.at(digits, i);
        }
        return sum % 89 == 0;
    }

    /** As printed: {@code 99 000 000 000}. */
    @Override
    public String toString() {
        return digits.replaceAll("(..)(...)(...)(...)", "$1 $2 $3 $4");
    }
}
