package paperbark.rules;

/** The key of a table that knows only days. */
public enum Unkeyed {
    /** The one key there is. */
    ALL;

    String text() {
        return "";
    }
}
