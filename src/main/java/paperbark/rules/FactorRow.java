package paperbark.rules;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * The factors of an activity in a climate zone. Shipped empty, because the tables of the
 * Specifications could not be read; the firm enters them.
 *
 * @param version version of the Specifications that the figures belong to, such as {@code 23.0}
 * @param abatementMwh lifetime baseline, MWh
 * @param sef coefficient on the supplementary energy, MWh year a GJ
 * @param aef coefficient on the auxiliary energy, MWh year a GJ
 * @param locationFactor factor for the place, where the source has one
 * @param discountFactor factor declared by the Minister, where there is one
 */
public record FactorRow(
        String version,
        BigDecimal abatementMwh,
        BigDecimal sef,
        BigDecimal aef,
        Optional<BigDecimal> locationFactor,
        Optional<BigDecimal> discountFactor) {

    /**
     * What the factors belong to.
     *
     * @param activity code such as {@code 1D}
     * @param climateZone 4 or 5
     */
    public record Key(String activity, int climateZone) {
        String text() {
            return activity + "|" + climateZone;
        }
    }

    static final TableLayout<Key, FactorRow> LAYOUT =
            new TableLayout<>(
                    "veec/factors.csv",
                    List.of("activity", "climate_zone"),
                    List.of(
                            "version",
                            "abatement_mwh",
                            "sef_mwh_year_per_gj",
                            "aef_mwh_year_per_gj",
                            "location_factor",
                            "discount_factor"),
                    List.of("location_factor", "discount_factor"),
                    FactorRow::read,
                    Key::text);

    private static FactorRow read(RuleRow row) {
        return new FactorRow(
                row.text("version"),
                row.decimal("abatement_mwh"),
                row.decimal("sef_mwh_year_per_gj"),
                row.decimal("aef_mwh_year_per_gj"),
                row.decimalOrBlank("location_factor"),
                row.decimalOrBlank("discount_factor"));
    }
}
