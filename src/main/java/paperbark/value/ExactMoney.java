package paperbark.value;

import java.math.BigDecimal;

/**
 * An amount in Australian dollars that may hold fractions of a cent: unit prices and lines before
 * rounding. It is never printed or stored as an amount due.
 *
 * @param amount dollars, any scale
 */
public record ExactMoney(BigDecimal amount) {

    /** The amount that many times. */
    public ExactMoney times(BigDecimal factor) {
        return new ExactMoney(amount.multiply(factor));
    }

    /** As printed: {@code $37.255}, at least two decimals. */
    public String shown() {
        return "$" + (amount.scale() < 2 ? amount.setScale(2) : amount).toPlainString();
    }

    /** Rounded to whole cents by the named method. */
    public Money round(Rounding method) {
        return new Money(amount.setScale(2, method.mode()));
    }
}
