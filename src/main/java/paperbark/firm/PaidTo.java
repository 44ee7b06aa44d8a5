package paperbark.firm;

/** Whom a buyer is ready to pay. */
public enum PaidTo {
    /** The owner's account only. */
    OWNER("owner"),
    /** The firm's account only. */
    FIRM("firm"),
    /** Either, as the assignment says. */
    EITHER("either");

    private final String word;

    PaidTo(String word) {
        this.word = word;
    }

    /** The word used in the offers table. */
    public String word() {
        return word;
    }
}
