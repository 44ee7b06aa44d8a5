package paperbark.value;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** The licensed trades on a water heater job. */
public enum Trade {
    /** Connects water and, where licensed for it, gas. */
    PLUMBING("plumbing", "plumber", "plumb"),
    /** Wires the heater. */
    ELECTRICAL("electrical", "electrician", "electric", "elec", "sparky", "sparkie");

    private final String word;
    private final List<String> people;

    Trade(String word, String... people) {
        this.word = word;
        this.people = List.of(people);
    }

    /** Reads the word, or what people call whoever has the trade, in any case. */
    public static Parsed<Trade> parse(String text) {
        String said = text.strip().toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(t -> t.word.equals(said) || t.people.contains(said))
                .findFirst()
                .map(Parsed::ok)
                .orElseGet(
                        () ->
                                Parsed.bad(
                                        "The word is neither of the two trades.",
                                        "Type plumbing or electrical."));
    }

    /** The word used in tables and on paper. */
    public String word() {
        return word;
    }
}
