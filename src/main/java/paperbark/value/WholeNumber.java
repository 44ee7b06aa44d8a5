package paperbark.value;

/** Reads counts as offices type them. */
public final class WholeNumber {
    private WholeNumber() {}

    /** Reads a whole number from 0 to 999999, without sign, unit or separators. */
    public static Parsed<Integer> parse(String text) {
        return text.matches("[0-9]{1,6}")
                ? Parsed.ok(Integer.valueOf(text))
                : Parsed.bad(
                        "The text is not a whole number.", "Type a whole number without a unit.");
    }
}
