package paperbark.output.table;

/** What a column holds, for its alignment. */
public enum Kind {
    /** Words, also numbers that are names, such as postcodes and serials. */
    TEXT,
    /** A whole number. */
    WHOLE,
    /** Dollars and cents. */
    MONEY,
    /** A unit price, which may hold fractions of a cent. */
    PRICE,
    /** A day. */
    DATE,
    /** Yes or no. */
    FLAG;

    /** Whether its values stand at the right of the column. */
    public boolean isNumber() {
        return this == WHOLE || this == MONEY || this == PRICE;
    }
}
