package paperbark.output.table;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import paperbark.value.Money;

/**
 * One cell: its value, and where it is derived the formula that gives the same value.
 *
 * <p>A formula names cells, never places: {@code [net]} is the cell of that column in the same row,
 * {@code [Expected:net]} is that column of the table from its first to its last row, {@code [#net]}
 * is the heading of that column. It holds nothing that a user typed.
 *
 * @param value what the cell shows
 * @param formula how a spreadsheet works it out, without the equals sign
 * @param target place in the same workbook that the cell links to, e.g. {@code 'Week 47'!F14}
 */
public record TableCell(Value value, Optional<String> formula, Optional<String> target) {
    /** A cell with nothing in it. */
    public static final TableCell BLANK = of(Value.BLANK);

    /** A cell as given. */
    public static TableCell of(Value value) {
        return new TableCell(value, Optional.empty(), Optional.empty());
    }

    /** Words. */
    public static TableCell text(String text) {
        return of(Value.text(text));
    }

    /** Words, where there are any. */
    public static TableCell text(Optional<String> text) {
        return of(Value.text(text));
    }

    /** A whole number. */
    public static TableCell whole(long number) {
        return of(new Value.Whole(number));
    }

    /** An amount as given. */
    public static TableCell money(Money money) {
        return of(Value.money(money));
    }

    /** A day. */
    public static TableCell day(LocalDate day) {
        return of(new Value.Day(day));
    }

    /** Yes or no. */
    public static TableCell flag(boolean yes) {
        return of(new Value.Flag(yes));
    }

    /** A whole number that follows from others. */
    public static TableCell derivedWhole(String formula, long number) {
        return derived(formula, new Value.Whole(number));
    }

    /** A day that follows from others. */
    public static TableCell derivedDay(String formula, LocalDate day) {
        return derived(formula, new Value.Day(day));
    }

    /** An amount that follows from others. */
    public static TableCell derivedMoney(String formula, Money money) {
        return derivedMoney(formula, money.amount());
    }

    /** An amount that follows from others. */
    public static TableCell derivedMoney(String formula, BigDecimal dollars) {
        return derived(formula, new Value.Amount(dollars));
    }

    private static TableCell derived(String formula, Value value) {
        return new TableCell(value, Optional.of(formula), Optional.empty());
    }

    /** The same cell, linked to a place in the workbook. */
    public TableCell linkedTo(Optional<String> place) {
        return new TableCell(value, formula, place);
    }
}
