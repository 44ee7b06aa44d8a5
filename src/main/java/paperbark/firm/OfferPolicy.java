package paperbark.firm;

/** How the firm picks among the offers in force. */
public enum OfferPolicy {
    /** What leaves the firm most after fee, GST and the cost of waiting. */
    HIGHEST_NET("highest net"),
    /** What pays first. */
    QUICKEST("quickest"),
    /** One buyer, unless another is better by a set amount. */
    PREFERRED("preferred buyer");

    private final String word;

    OfferPolicy(String word) {
        this.word = word;
    }

    /** The word used in the firm's table and shown beside a choice. */
    public String word() {
        return word;
    }
}
