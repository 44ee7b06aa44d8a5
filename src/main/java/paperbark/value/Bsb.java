package paperbark.value;

/**
 * A bank branch number: six digits, no check digit. Neither bank nor state is inferred from it.
 *
 * @param digits the six digits
 */
public record Bsb(String digits) {

    /** Refuses anything but six digits. */
    public Bsb {
        if (!digits.matches("[0-9]{6}")) {
            throw new IllegalArgumentException("not a BSB");
        }
    }

    /** Reads six digits, with or without a hyphen or space. */
    public static Parsed<Bsb> parse(String text) {
        return Digits.of(text)
                .filter(d -> d.length() == 6)
                .map(d -> Parsed.ok(new Bsb(d)))
                .orElse(
                        Parsed.bad(
                                "The text is not a BSB of six digits.",
                                "Type the BSB as 000-000, in a cell formatted as text."));
    }

    /** The number in full, for the papers that need it: {@code 000-000}. */
    public String full() {
        return digits.substring(0, 3) + "-" + digits.substring(3);
    }

    /** Masked, so that no log or message can give it away. */
    @Override
    public String toString() {
        return "***-***";
    }
}
