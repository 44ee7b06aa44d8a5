package paperbark.firm;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import paperbark.value.Boost;
import paperbark.value.DateRange;
import paperbark.value.HeaterKind;

/**
 * Builds products for tests. Each {@code with} gives a changed copy:
 *
 * <pre>{@code
 * Product big = Products.heatPump().withLitres(426).product();
 * }</pre>
 */
public record Products(Product product) {

    /** A Dunlin heat pump of 270 L, 30 STCs in all five zones, Bs 4 and Be 0.3 in zones 4, 5. */
    public static Products heatPump() {
        return new Products(
                new Product(
                        "Dunlin",
                        "DN-270",
                        HeaterKind.HEAT_PUMP,
                        Boost.ELECTRIC,
                        270,
                        0,
                        List.of(listing(30, 5)),
                        Optional.of(veecInputs("4", "0.3")),
                        Optional.empty(),
                        Optional.of(7),
                        Optional.of(5),
                        Optional.of(5)));
    }

    /** A Ternlight tube solar heater of 315 L with electric boost, 33 STCs in all four zones. */
    public static Products solar() {
        return new Products(
                new Product(
                        "Ternlight",
                        "TL-315-30",
                        HeaterKind.SOLAR_TUBES,
                        Boost.ELECTRIC,
                        315,
                        30,
                        List.of(listing(33, 4)),
                        Optional.of(veecInputs("5", "0.3")),
                        Optional.empty(),
                        Optional.of(10),
                        Optional.of(10),
                        Optional.of(5)));
    }

    /** Another volume. */
    public Products withLitres(int litres) {
        return changed(product.boost(), litres, product.listings(), product.veec());
    }

    /** Another boost. */
    public Products withBoost(Boost boost) {
        return changed(boost, product.litres(), product.listings(), product.veec());
    }

    /** Listed with the same ten-year figure in all zones of the technology, from 2001 on. */
    public Products withStcs(int tenYearStcs) {
        return withListings(listing(tenYearStcs, product.isSolar() ? 4 : 5));
    }

    /** Other listings on the federal register. */
    public Products withListings(Listing... listings) {
        return changed(product.boost(), product.litres(), List.of(listings), product.veec());
    }

    /** Bs and Be, GJ a year, in zones 4 and 5. */
    public Products withEnergies(String supplementaryGj, String auxiliaryGj) {
        return withVeec(Optional.of(veecInputs(supplementaryGj, auxiliaryGj)));
    }

    /** Another listing on the Victorian register, or none. */
    public Products withVeec(Optional<VeecInputs> veec) {
        return changed(product.boost(), product.litres(), product.listings(), veec);
    }

    /** The same warranty in years on everything; empty is not known. */
    public Products withWarranty(Optional<Integer> years) {
        Product p = product;
        return new Products(
                new Product(
                        p.maker(),
                        p.model(),
                        p.kind(),
                        p.boost(),
                        p.litres(),
                        p.collectors(),
                        p.listings(),
                        p.veec(),
                        p.serialPattern(),
                        years,
                        years,
                        years));
    }

    /** A listing from 1 April 2001, open, with one figure for zones 1 to the given one. */
    public static Listing listing(int tenYearStcs, int zones) {
        Map<Integer, Integer> byZone = new TreeMap<>();
        for (int zone = 1; zone <= zones; zone++) {
            byZone.put(zone, tenYearStcs);
        }
        DateRange always = new DateRange(Optional.of(LocalDate.of(2001, 4, 1)), Optional.empty());
        return new Listing(always, Listing.Basis.TEN_YEARS, byZone, "61", 7);
    }

    private static VeecInputs veecInputs(String bs, String be) {
        VeecInputs.Energies both = new VeecInputs.Energies(new BigDecimal(bs), new BigDecimal(be));
        return new VeecInputs(DateRange.ALWAYS, Map.of(4, both, 5, both), 7);
    }

    private Products changed(
            Boost boost, int litres, List<Listing> listings, Optional<VeecInputs> veec) {
        Product p = product;
        return new Products(
                new Product(
                        p.maker(),
                        p.model(),
                        p.kind(),
                        boost,
                        litres,
                        p.collectors(),
                        listings,
                        veec,
                        p.serialPattern(),
                        p.tankWarrantyYears(),
                        p.collectorWarrantyYears(),
                        p.partsWarrantyYears()));
    }
}
