package paperbark.firm;

import java.util.Map;
import paperbark.value.DateRange;

/**
 * What the federal register says of a product for a period.
 *
 * @param eligible installation days covered, both ends included
 * @param tenYearStcs whole STCs on the ten-year basis by zone (solar 1 to 4, heat pumps 1 to 5); a
 *     zone that is absent is not listed
 * @param registerVersion version of the register that it was read from
 * @param row 1-based row of the products table
 */
public record Listing(
        DateRange eligible, Map<Integer, Integer> tenYearStcs, String registerVersion, int row) {

    /** Keeps the zones from being changed. */
    public Listing {
        tenYearStcs = Map.copyOf(tenYearStcs);
    }
}
