package paperbark.firm;

/** What an account of the firm's books is for; the table of accounts names each. */
public enum AccountRole {
    OWNERS("owed by owners", "assets:receivable:owners"),
    BUYERS("owed by certificate buyers", "assets:receivable:certificate buyers"),
    CERTIFICATES("certificates taken", "assets:certificates"),
    GST_ON_PURCHASES("gst on purchases", "assets:gst on purchases"),
    GST_ON_SALES("gst on sales", "liabilities:gst on sales"),
    GST_LATER("gst when buyers pay", "liabilities:gst when buyers pay"),
    SALES("sales", "income:sales"),
    BEYOND("paid beyond discounts", "income:certificates"),
    SHORT("short of discounts", "expenses:certificates");

    private final String word;
    private final String usualName;

    AccountRole(String word, String usualName) {
        this.word = word;
        this.usualName = usualName;
    }

    /** The word in the table of accounts. */
    public String word() {
        return word;
    }

    /** The name where the table has none. */
    public String usualName() {
        return usualName;
    }
}
