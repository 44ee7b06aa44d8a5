package paperbark.rules;

import java.math.BigDecimal;
import java.util.List;

/**
 * The electricity emissions factor.
 *
 * @param tonnesPerMwh tonnes of CO2-e a megawatt hour
 */
public record EmissionFactorRow(BigDecimal tonnesPerMwh) {
    static final Layout<Unkeyed, EmissionFactorRow> LAYOUT =
            Layout.of(
                    "veec/emission-factors.csv",
                    List.of("eef_t_per_mwh"),
                    row -> new EmissionFactorRow(row.decimal("eef_t_per_mwh")),
                    Unkeyed::text);
}
