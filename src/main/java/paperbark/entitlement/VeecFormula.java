package paperbark.entitlement;

import java.math.BigDecimal;
import java.util.Optional;
import paperbark.firm.VeecInputs.Energies;
import paperbark.rules.FactorRow;

/**
 * The equations of the Specifications, in decimal numbers, unrounded.
 *
 * @param factors abatement and coefficients of activity and climate zone
 * @param energies Bs and Be of the product in that zone, GJ a year
 * @param emissionFactor EEF, t CO2-e a MWh
 */
record VeecFormula(FactorRow factors, Energies energies, BigDecimal emissionFactor) {

    /**
     * The tonnes of an activity.
     *
     * @return empty for activities whose equation was not read
     */
    Optional<BigDecimal> tonnes(String activity) {
        return switch (activity) {
            case "1C", "1D" -> Optional.of(further(equation12()));
            case "3C", "3D" -> Optional.of(further(equation31()));
            default -> Optional.empty();
        };
    }

    /**
     * Equation 1.2, for an electric heater replaced: abatement less the energy bought, times the
     * emissions factor.
     */
    private BigDecimal equation12() {
        // rule: veu-training-note equation 1.2: t = (Abatement - SEF*Bs - AEF*Be) * EEF. It was
        // read for 1D; the same shape is presumed for 1C.
        return factors.abatementMwh()
                .subtract(factors.sef().multiply(energies.supplementaryGj()))
                .subtract(factors.aef().multiply(energies.auxiliaryGj()))
                .multiply(emissionFactor);
    }

    /**
     * Equation 3.1, for a gas heater replaced. As restated it gives the same as equation 1.2, yet
     * the source says that the two must not be mixed; so it stands on its own.
     */
    private BigDecimal equation31() {
        // rule: veu-training-note equation 3.1: t = (Abatement - ((SEF*Bs) + (AEF*Be))) * EEFm with
        // EEFm = EEF. It was read for 3C; the same shape is presumed for 3D.
        BigDecimal bought =
                factors.sef()
                        .multiply(energies.supplementaryGj())
                        .add(factors.aef().multiply(energies.auxiliaryGj()));
        return factors.abatementMwh().subtract(bought).multiply(emissionFactor);
    }

    private BigDecimal further(BigDecimal tonnes) {
        // rule: how-we-read further factors: applied only where the firm's source names one.
        return tonnes.multiply(factors.locationFactor().orElse(BigDecimal.ONE))
                .multiply(factors.discountFactor().orElse(BigDecimal.ONE));
    }

    /** The sum with its numbers: {@code (40 - 3 x 3 - 3 x 0.2) x 0.393}. */
    String working(String activity) {
        String bought = activity.startsWith("3") ? "((%s x %s) + (%s x %s))" : "%s x %s - %s x %s";
        return "(%s - ".formatted(plain(factors.abatementMwh()))
                + bought.formatted(
                        plain(factors.sef()),
                        plain(energies.supplementaryGj()),
                        plain(factors.aef()),
                        plain(energies.auxiliaryGj()))
                + ") x "
                + plain(emissionFactor)
                + factors.locationFactor().map(f -> " x " + plain(f)).orElse("")
                + factors.discountFactor().map(f -> " x " + plain(f)).orElse("");
    }

    /** A decimal number without needless zeros: {@code 11.9472}. */
    static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
