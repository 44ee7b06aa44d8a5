package paperbark.output.table;

/**
 * One column of a table.
 *
 * @param key the name by which formulas know it: lower-case letters and hyphens
 * @param heading as shown, once in a table
 * @param kind what it holds
 * @param widthCharacters room for that many average characters
 */
public record TableColumn(String key, String heading, Kind kind, int widthCharacters) {

    /** Refuses a key that formulas could not name. */
    public TableColumn {
        if (!key.matches("[a-z][a-z-]*")) {
            throw new IllegalArgumentException("not a column key: " + key);
        }
    }

    /** A column of words. */
    public static TableColumn text(String key, String heading, int widthCharacters) {
        return new TableColumn(key, heading, Kind.TEXT, widthCharacters);
    }

    /** A column of whole numbers. */
    public static TableColumn whole(String key, String heading, int widthCharacters) {
        return new TableColumn(key, heading, Kind.WHOLE, widthCharacters);
    }

    /** A column of dollars and cents. */
    public static TableColumn money(String key, String heading) {
        return new TableColumn(key, heading, Kind.MONEY, 15);
    }

    /** A column of days. */
    public static TableColumn date(String key, String heading) {
        return new TableColumn(key, heading, Kind.DATE, 14);
    }

    /** A column of yes and no. */
    public static TableColumn flag(String key, String heading, int widthCharacters) {
        return new TableColumn(key, heading, Kind.FLAG, widthCharacters);
    }
}
