package paperbark.finding;

/**
 * The row of a rule table that spoke.
 *
 * @param table file name of the table, e.g. {@code stc/years.csv}
 * @param row 1-based line in that file
 * @param source the source in words: title and publisher
 * @param pinpoint section, table or page within the source; may be empty
 * @param confidence {@code published}, {@code derived}, {@code memory}, {@code demo} or {@link
 *     #ENTERED}
 * @param says the row in full, with its days; may be empty
 * @param version first digits of the table's checksum; empty for the firm's other tables
 */
public record RuleRef(
        String table,
        int row,
        String source,
        String pinpoint,
        String confidence,
        String says,
        String version) {
    /** The confidence of what the firm typed into a table of its own: its word stands for it. */
    public static final String ENTERED = "entered";

    /** Whether the row was read in its source. */
    public boolean isPublished() {
        return confidence.equals("published");
    }

    /** Source, pinpoint and, where it was not read in the source, how sure we are. */
    public String inWords() {
        String where = pinpoint.isEmpty() ? source : source + ", " + pinpoint;
        return isPublished() ? where : where + " (" + sure() + ")";
    }

    /** How sure we are, for people: {@code from memory, not verified}. */
    public String sure() {
        return switch (confidence) {
            case "memory" -> "from memory, not verified";
            case ENTERED -> "the firm's entry";
            case "demo" -> "invented for the demonstration";
            default -> confidence;
        };
    }
}
