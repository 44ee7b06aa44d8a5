package paperbark.value;

/**
 * A postcode: four digits, kept as text because those of the Northern Territory begin with zero.
 *
 * @param digits the four digits
 */
public record Postcode(String digits) implements Comparable<Postcode> {

    /** Refuses anything but four digits, and 0000. */
    public Postcode {
        if (!digits.matches("[0-9]{4}") || digits.equals("0000")) {
            throw new IllegalArgumentException("not a postcode");
        }
    }

    /** Reads exactly four digits. */
    public static Parsed<Postcode> parse(String text) {
        String digits = text.strip();
        if (digits.matches("[0-9]{4}") && !digits.equals("0000")) {
            return Parsed.ok(new Postcode(digits));
        }
        return Parsed.bad(
                "The text is not a postcode of four digits.",
                "Type the four-digit postcode, in a cell formatted as text.");
    }

    /** As a number for range comparisons, 200 to 9999. */
    public int number() {
        return Integer.parseInt(digits);
    }

    @Override
    public int compareTo(Postcode other) {
        return digits.compareTo(other.digits);
    }

    @Override
    public String toString() {
        return digits;
    }
}
