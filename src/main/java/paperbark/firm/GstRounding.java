package paperbark.firm;

/**
 * The two ways in which a supplier may round the GST of an invoice with several supplies. Source: A
 * New Tax System (Goods and Services Tax) Act 1999 s 9-90.
 */
public enum GstRounding {
    /** The GST of all supplies is added unrounded and rounded once, half a cent up. */
    TOTAL_INVOICE("total invoice"),
    /** The GST of each supply is rounded, half a cent up, and then added. */
    TAXABLE_SUPPLY("taxable supply");

    private final String word;

    GstRounding(String word) {
        this.word = word;
    }

    /** The word used in the firm's table. */
    public String word() {
        return word;
    }
}
