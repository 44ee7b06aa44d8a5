package paperbark.offer;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Predicate;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * What the owner pays. GST is an eleventh of the full price, never of what is paid after the
 * assignment of certificates: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820).
 *
 * @param fullPrice heater and installation with GST
 * @param discounts value of the certificates assigned as a discount, by scheme; no GST
 * @param gst GST included in the full price; zero where the firm is not registered
 * @param gstDivisor 11 means that an eleventh of the full price is GST
 */
public record OwnerPrice(
        Money fullPrice, Map<SchemeName, Money> discounts, Money gst, int gstDivisor) {

    /** Keeps the discounts, in the order of the schemes, from being changed. */
    public OwnerPrice {
        Map<SchemeName, Money> all = new EnumMap<>(SchemeName.class);
        all.putAll(discounts);
        discounts = Collections.unmodifiableMap(all);
    }

    /** The same price with the discounts of these schemes alone. */
    public OwnerPrice keeping(Predicate<SchemeName> kept) {
        Map<SchemeName, Money> some = new EnumMap<>(SchemeName.class);
        discounts.forEach(
                (scheme, value) -> {
                    if (kept.test(scheme)) {
                        some.put(scheme, value);
                    }
                });
        return new OwnerPrice(fullPrice, some, gst, gstDivisor);
    }

    /** What all certificates assigned as a discount take off the price. */
    public Money assigned() {
        return discounts.values().stream().reduce(Money.ZERO, Money::plus);
    }

    /** Whether nothing is taken off the price for certificates. */
    public boolean assignsNothing() {
        return assigned().isZero();
    }

    /** Full price less what was assigned. */
    public Money payable() {
        return fullPrice.minus(assigned());
    }
}
