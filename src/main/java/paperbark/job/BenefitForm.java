package paperbark.job;

/** In what form the owner gets the value of the certificates. */
public enum BenefitForm {
    /** Taken off the price. */
    DISCOUNT("discount on the price"),
    /** Paid to the owner's account by the buyer. */
    PAYMENT("payment to the owner"),
    /** Anything else, described by hand. */
    OTHER("other");

    private final String word;

    BenefitForm(String word) {
        this.word = word;
    }

    /** The words used in registers and on paper. */
    public String word() {
        return word;
    }
}
