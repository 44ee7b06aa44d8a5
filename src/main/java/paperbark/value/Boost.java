package paperbark.value;

/** What heats the water when sun or air do not suffice. */
public enum Boost {
    /** An electric element. */
    ELECTRIC("electric"),
    /** A gas burner. */
    GAS("gas"),
    /** Nothing. */
    NONE("none");

    private final String word;

    Boost(String word) {
        this.word = word;
    }

    /** The word used in tables and on paper. */
    public String word() {
        return word;
    }
}
