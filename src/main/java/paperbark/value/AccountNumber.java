package paperbark.value;

/**
 * A bank account number: up to nine digits as direct entry takes them (from memory, not verified);
 * leading zeros count.
 *
 * @param digits the digits
 */
public record AccountNumber(String digits) {

    /** Refuses anything but one to nine digits. */
    public AccountNumber {
        if (!digits.matches("[0-9]{1,9}")) {
            throw new IllegalArgumentException("not an account number");
        }
    }

    /** Reads up to nine digits, with or without spaces and hyphens. */
    public static Parsed<AccountNumber> parse(String text) {
        return Digits.of(text)
                .filter(d -> d.length() <= 9)
                .map(d -> Parsed.ok(new AccountNumber(d)))
                .orElse(
                        Parsed.bad(
                                "The text is not an account number of at most nine digits.",
                                "Type the account number without the BSB, in a cell formatted as text."));
    }

    /**
     * Whether it has fewer digits than banks give out: six to nine (from memory, not verified), of
     * which the first may be zeros that a spreadsheet drops.
     */
    public boolean isShort() {
        return digits.length() < 6;
    }

    /** The number in full, for the papers that need it. */
    public String full() {
        return digits;
    }

    /** Masked, so that no log or message can give it away. */
    @Override
    public String toString() {
        return "*".repeat(digits.length());
    }
}
