package paperbark.firm;

/** What an offered price says of the GST that an owner in business owes on the assignment. */
public enum GstBasis {
    /** The price is without GST: the buyer pays the owner's GST on top, against a tax invoice. */
    PLUS("plus"),
    /** The price holds the GST: what the owner owes comes out of it. */
    INCLUDED("included");

    private final String word;

    GstBasis(String word) {
        this.word = word;
    }

    /** The word used in the offers table. */
    public String word() {
        return word;
    }
}
