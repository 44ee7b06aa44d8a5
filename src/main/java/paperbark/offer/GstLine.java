package paperbark.offer;

import java.math.BigDecimal;
import paperbark.value.Money;

/**
 * One supply on an invoice.
 *
 * @param amount its price with GST, or its value without
 * @param withGst whether the amount holds the GST
 */
public record GstLine(Money amount, boolean withGst) {

    /** A supply by its price with GST. */
    public static GstLine price(Money price) {
        return new GstLine(price, true);
    }

    /** A supply by its value without GST. */
    public static GstLine value(Money value) {
        return new GstLine(value, false);
    }

    /**
     * The GST as a whole number of parts, so that nothing is rounded on the way: where an eleventh
     * of a price is GST, a 110th of these parts is the GST.
     */
    BigDecimal parts(int divisor) {
        return amount.amount().multiply(BigDecimal.valueOf(withGst ? divisor - 1 : divisor));
    }
}
