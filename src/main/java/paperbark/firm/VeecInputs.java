package paperbark.firm;

import java.math.BigDecimal;
import java.util.Map;
import paperbark.value.DateRange;

/**
 * What the Victorian register of products says of a product.
 *
 * @param listed days on which it is listed, both ends included
 * @param byZone annual energies by climate zone (4 or 5); a zone that is absent is not listed
 * @param row 1-based row of the products table
 */
public record VeecInputs(DateRange listed, Map<Integer, Energies> byZone, int row) {

    /**
     * Annual energies from AS/NZS 4234 modelling.
     *
     * @param supplementaryGj Bs, boost energy, GJ a year
     * @param auxiliaryGj Be, controls and pumps, GJ a year
     */
    public record Energies(BigDecimal supplementaryGj, BigDecimal auxiliaryGj) {}

    /** Keeps the zones from being changed. */
    public VeecInputs {
        byZone = Map.copyOf(byZone);
    }
}
