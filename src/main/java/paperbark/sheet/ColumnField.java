package paperbark.sheet;

/** Something that a column can hold, whatever the firm calls it. */
public interface ColumnField {

    /** The name in the table of headings, e.g. {@code tank-serial}. */
    String key();

    /** The words for people, used where the firm's own heading is not at hand. */
    String label();

    /** Whether a list without such a column is refused. */
    boolean isNeeded();
}
