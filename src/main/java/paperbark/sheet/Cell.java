package paperbark.sheet;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One cell as stored, not as displayed.
 *
 * @param column 1-based
 * @param address such as {@code F14}
 * @param kind the type of what is stored
 * @param text the text cleaned of outer and invisible characters; a number in plain digits without
 *     exponent, a date as {@code 2026-11-20}, a boolean as {@code yes} or {@code no}, an error as
 *     the sheet shows it
 * @param number present for numbers
 * @param date present where the cell's own format says that the number is a date
 * @param troubles what a reader of this cell must be told, if the column matters to anyone
 */
@RecordBuilder
public record Cell(
        int column,
        String address,
        Kind kind,
        String text,
        Optional<BigDecimal> number,
        Optional<LocalDate> date,
        List<CellTrouble> troubles) {

    /** What a cell stores. */
    public enum Kind {
        /** Nothing, or only spaces. */
        BLANK,
        /** Text, also everything in a CSV file. */
        TEXT,
        /** A number without a date format. */
        NUMBER,
        /** A number with a date format. */
        DATE,
        /** True or false. */
        BOOLEAN,
        /** An error such as #REF!, or a value that could not be read; the troubles say which. */
        UNUSABLE
    }

    /** Keeps the troubles from being changed. */
    public Cell {
        troubles = List.copyOf(troubles);
    }

    /** A cell with nothing in it. */
    public static Cell blank(int column, String address) {
        return new Cell(
                column, address, Kind.BLANK, "", Optional.empty(), Optional.empty(), List.of());
    }

    /** A cell holding text. */
    public static Cell text(int column, String address, String text) {
        Kind kind = text.isEmpty() ? Kind.BLANK : Kind.TEXT;
        return new Cell(column, address, kind, text, Optional.empty(), Optional.empty(), List.of());
    }

    /**
     * The row that the address names, from 1; that of another row where a fact was taken from it.
     */
    public int row() {
        return Integer.parseInt(address.replaceAll("[^0-9]", ""));
    }

    /** Whether nothing is in it. */
    public boolean isBlank() {
        return kind == Kind.BLANK;
    }
}
