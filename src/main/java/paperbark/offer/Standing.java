package paperbark.offer;

/**
 * How a claim stands. Whatever tells of a claim's certificates or money asks this, so that no paper
 * or sheet counts on what another holds back.
 */
public enum Standing {
    /** Nothing is claimed under the scheme. */
    NOT_CLAIMED("not claimed"),
    /** A stop keeps the assignment back; nothing may count on it until it is mended. */
    HELD("held"),
    /** The job earns no certificate, so there is nothing to assign. */
    NOTHING("earns nothing"),
    /** The assignment goes out, the heater is still to be installed. */
    BOOKED("booked"),
    /** The heater is in and the assignment goes out. */
    DUE("due");

    private final String word;

    Standing(String word) {
        this.word = word;
    }

    /** The word shown to people. */
    public String word() {
        return word;
    }

    /** Whether papers and sums may count on the claim. */
    public boolean counts() {
        return this == BOOKED || this == DUE;
    }

    /** Whether the claim was made and comes to nothing as things stand. */
    public boolean fallsAway() {
        return this == HELD || this == NOTHING;
    }
}
