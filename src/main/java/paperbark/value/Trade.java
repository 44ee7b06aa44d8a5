package paperbark.value;

/** The licensed trades on a water heater job. */
public enum Trade {
    /** Connects water and, where licensed for it, gas. */
    PLUMBING("plumbing"),
    /** Wires the heater. */
    ELECTRICAL("electrical");

    private final String word;

    Trade(String word) {
        this.word = word;
    }

    /** The word used in tables and on paper. */
    public String word() {
        return word;
    }
}
