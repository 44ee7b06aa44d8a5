package paperbark.output.table;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import paperbark.value.Days;
import paperbark.value.Money;

/** What one cell of a table holds. */
public sealed interface Value {
    /** Nothing. */
    Value BLANK = new Blank();

    /** Nothing is known. */
    record Blank() implements Value {}

    /** Words, never read as a number or formula. */
    record Text(String text) implements Value {}

    /** A whole number. */
    record Whole(long number) implements Value {}

    /** Dollars and cents, scale 2. */
    record Amount(BigDecimal dollars) implements Value {}

    /** A unit price in dollars, any scale. */
    record Price(BigDecimal dollars) implements Value {}

    /** A day. */
    record Day(LocalDate day) implements Value {}

    /** Yes or no. */
    record Flag(boolean yes) implements Value {}

    /** Words; blank where there are none. */
    static Value text(String text) {
        return text.isEmpty() ? BLANK : new Text(text);
    }

    /** Words; blank where there are none. */
    static Value text(Optional<String> text) {
        return text.map(Value::text).orElse(BLANK);
    }

    /** An amount. */
    static Value money(Money money) {
        return new Amount(money.amount());
    }

    /** A day; blank where it is open. */
    static Value day(Optional<LocalDate> day) {
        return day.<Value>map(Day::new).orElse(BLANK);
    }

    /** The number behind it: zero for anything that is not a number. */
    default BigDecimal amount() {
        if (this instanceof Whole whole) {
            return BigDecimal.valueOf(whole.number());
        }
        if (this instanceof Amount amount) {
            return amount.dollars();
        }
        return this instanceof Price price ? price.dollars() : BigDecimal.ZERO;
    }

    /** As a reader sees it; empty text for nothing. */
    default String shown() {
        if (this instanceof Text text) {
            return text.text();
        }
        if (this instanceof Whole whole) {
            return Long.toString(whole.number());
        }
        if (this instanceof Amount amount) {
            return new Money(amount.dollars()).toString();
        }
        if (this instanceof Price price) {
            return "$" + price.dollars().toPlainString();
        }
        if (this instanceof Day day) {
            return Days.show(day.day());
        }
        return this instanceof Flag flag ? (flag.yes() ? "yes" : "no") : "";
    }
}
