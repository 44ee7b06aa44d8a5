package paperbark.finding;

/**
 * The row of a rule table that spoke.
 *
 * @param table file name of the table, e.g. {@code stc/years.csv}
 * @param row 1-based line in that file
 * @param source the source in words: title and publisher
 * @param pinpoint section, table or page within the source; may be empty
 * @param confidence {@code published}, {@code derived}, {@code memory} or {@code demo}
 */
public record RuleRef(String table, int row, String source, String pinpoint, String confidence) {

    /** Source, pinpoint and, where it was not read in the source, how sure we are. */
    public String inWords() {
        String where = pinpoint.isEmpty() ? source : source + ", " + pinpoint;
        return confidence.equals("published") ? where : where + " (" + sure() + ")";
    }

    /** How sure we are, for people: {@code from memory, not verified}. */
    public String sure() {
        return switch (confidence) {
            case "memory" -> "from memory, not verified";
            case "demo" -> "invented for the demonstration";
            default -> confidence;
        };
    }
}
