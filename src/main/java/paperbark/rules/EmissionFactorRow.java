package paperbark.rules;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * The version of the Victorian Specifications in force and the electricity emissions factor that
 * belongs to it.
 *
 * @param version such as {@code 23.0}
 * @param tonnesPerMwh tonnes of CO2-e a megawatt hour; empty where only the version is known
 */
public record EmissionFactorRow(String version, Optional<BigDecimal> tonnesPerMwh) {
    static final TableLayout<Unkeyed, EmissionFactorRow> LAYOUT =
            new TableLayout<>(
                    "veec/emission-factors.csv",
                    List.of(),
                    List.of("version", "eef_t_per_mwh"),
                    List.of("eef_t_per_mwh"),
                    EmissionFactorRow::read,
                    Unkeyed::text);

    private static EmissionFactorRow read(RuleRow row) {
        Optional<BigDecimal> factor = row.decimalOrBlank("eef_t_per_mwh");
        if (factor.isEmpty() && row.note().isEmpty()) {
            throw new RuleRow.WrongCell("eef_t_per_mwh is empty and no note says why");
        }
        return new EmissionFactorRow(row.text("version"), factor);
    }
}
