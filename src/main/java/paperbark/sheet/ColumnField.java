package paperbark.sheet;

import java.util.List;

/** Something that a column can hold, whatever the firm calls it. */
public interface ColumnField {

    /** The name in the table of headings, e.g. {@code tank-serial}. */
    String key();

    /** The words for people, used where the firm's own heading is not at hand. */
    String label();

    /** Whether a list without such a column is refused. */
    boolean isNeeded();

    /** The fields that one cell of such a column holds together; empty for a plain field. */
    default List<? extends ColumnField> parts() {
        return List.of();
    }
}
