package paperbark.firm;

import java.util.List;

/**
 * What people are told of a column of the firm's tables.
 *
 * @param heading the column's name, or that of a fact of the firm
 * @param holds what stands in its cells
 * @param choices where it holds a choice, the words; one that begins with {@code @} names a list of
 *     words that the writer of a workbook brings along
 * @param namesOf where it holds a name of another table, that table; else empty
 * @param example what an example row shows there; may be empty
 * @param note what it is, with unit and basis: one or two sentences
 */
public record ColumnGuide(
        String heading,
        Holds holds,
        List<String> choices,
        String namesOf,
        String example,
        String note) {

    /** What stands in the cells of a column. */
    public enum Holds {
        /** Text as typed, also digits that must keep their zeros. */
        TEXT,
        /** A day. */
        DAY,
        /** A number that is not less than nothing. */
        NUMBER,
        /** Dollars, up to four decimals. */
        MONEY,
        /** One of a few words. */
        CHOICE,
        /** A name that another table has. */
        NAME,
        /** Four digits as text. */
        POSTCODE,
        /** A telephone number as text. */
        PHONE
    }

    /** Keeps the list from being changed. */
    public ColumnGuide {
        choices = List.copyOf(choices);
    }

    /** A column that nothing is known of but its name. */
    static ColumnGuide plain(String heading) {
        return new ColumnGuide(heading, Holds.TEXT, List.of(), "", "", "");
    }

    /** The same under another name. */
    ColumnGuide named(String other) {
        return new ColumnGuide(other, holds, choices, namesOf, example, note);
    }
}
