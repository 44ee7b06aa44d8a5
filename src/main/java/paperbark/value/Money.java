package paperbark.value;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Pattern;

/**
 * An amount in Australian dollars and whole cents; negative amounts are allowed.
 *
 * @param amount dollars, scale exactly 2
 */
public record Money(BigDecimal amount) implements Comparable<Money> {
    /** No money. */
    public static final Money ZERO = Money.of("0.00");

    private static final Pattern TYPED =
            Pattern.compile("-?([0-9]{1,9}|[0-9]{1,3}(,[0-9]{3}){1,2})(\\.[0-9]{1,2})?");

    /** Refuses anything but whole cents. */
    public Money {
        if (amount.scale() != 2) {
            throw new IllegalArgumentException("money has exactly two decimals: " + amount);
        }
    }

    /** The amount written in dollars with at most two decimals, e.g. {@code 1234.5}. */
    public static Money of(String dollars) {
        return new Money(new BigDecimal(dollars).setScale(2, RoundingMode.UNNECESSARY));
    }

    /** That many whole cents. */
    public static Money ofCents(long cents) {
        return new Money(BigDecimal.valueOf(cents, 2));
    }

    /** The amount in whole cents. */
    public long cents() {
        return amount.unscaledValue().longValueExact();
    }

    /** The sum. */
    public Money plus(Money other) {
        return new Money(amount.add(other.amount));
    }

    /** The difference. */
    public Money minus(Money other) {
        return new Money(amount.subtract(other.amount));
    }

    /** The same, or nothing where it is less than that. */
    public Money orNothing() {
        return isNegative() ? ZERO : this;
    }

    /** Whether it is less than nothing. */
    public boolean isNegative() {
        return amount.signum() < 0;
    }

    /** Whether it is nothing. */
    public boolean isZero() {
        return amount.signum() == 0;
    }

    @Override
    public int compareTo(Money other) {
        return amount.compareTo(other.amount);
    }

    /** As printed: {@code $1,234.50}. */
    @Override
    public String toString() {
        StringBuilder shown = new StringBuilder(amount.abs().toPlainString());
        for (int comma = shown.length() - 6; comma > 0; comma -= 3) {
            shown.insert(comma, ',');
        }
        return (isNegative() ? "-$" : "$") + shown;
    }

    /**
     * Reads an amount as offices type it: {@code 1234}, {@code 1,234.50}, {@code $1,234.50}, {@code
     * -5.00}, {@code (150.00)}. A comma that does not stand before three digits is refused, never
     * guessed.
     */
    public static Parsed<Money> parse(String text) {
        String plain = text.strip().replace('\u2212', '-').replace("$", "").strip();
        boolean bracketed = plain.startsWith("(") && plain.endsWith(")") && plain.length() > 1;
        if (bracketed) {
            plain = plain.substring(1, plain.length() - 1).strip();
        }
        if (!TYPED.matcher(plain).matches() || (bracketed && plain.startsWith("-"))) {
            return Parsed.bad(
                    "The text is not an amount in dollars and cents.",
                    "Type the amount as a plain number such as 1234.50.");
        }
        Money money = Money.of(plain.replace(",", ""));
        return Parsed.ok(bracketed ? ZERO.minus(money) : money);
    }
}
