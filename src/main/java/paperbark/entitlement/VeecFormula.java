package paperbark.entitlement;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Map;
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

    /** An equation: the tonnes without further factors. */
    private interface Equation {
        Sum of(VeecFormula figures);
    }

    // rule: deeca-2023-05-18 version 15.0: Parts 1 and 3 were rewritten from 31 May 2023; earlier
    // equations were not read.
    private static final LocalDate REWRITTEN = LocalDate.of(2023, Month.MAY, 31);

    private static final List<SinceDate<Equation>> PART_1 =
            List.of(new SinceDate<>(REWRITTEN, VeecFormula::equation12));

    private static final List<SinceDate<Equation>> PART_3 =
            List.of(new SinceDate<>(REWRITTEN, VeecFormula::equation31));

    // rule: how-we-read VEEC equations: 1.2 was read for 1D and 3.1 for 3C; 1C and 3D are presumed
    // to share their shapes.
    private static final Map<String, List<SinceDate<Equation>>> EQUATIONS =
            Map.of("1C", PART_1, "1D", PART_1, "3C", PART_3, "3D", PART_3);

    /**
     * The tonnes of an activity.
     *
     * @param day day of the work
     * @return empty where the equation was not read
     */
    Optional<Sum> tonnes(String activity, LocalDate day) {
        return SinceDate.on(EQUATIONS.getOrDefault(activity, List.of()), day)
                .map(equation -> further(equation.of(this)));
    }

    /**
     * Equation 1.2, for an electric heater replaced: abatement less the energy bought, times the
     * emissions factor.
     */
    private Sum equation12() {
        // rule: veu-training-note equation 1.2: t = (Abatement - SEF*Bs - AEF*Be) * EEF.
        return abatement()
                .minus(supplementary())
                .minus(auxiliary())
                .times(Sum.of("EEF", emissionFactor));
    }

    /**
     * Equation 3.1, for a gas heater replaced. As restated it gives the same as equation 1.2, yet
     * the source says that the two must not be mixed; so it stands on its own.
     */
    private Sum equation31() {
        // rule: veu-training-note equation 3.1: t = (Abatement - ((SEF*Bs) + (AEF*Be))) * EEFm with
        // EEFm = EEF.
        return abatement()
                .minus(supplementary().plus(auxiliary()))
                .times(Sum.of("EEF", emissionFactor));
    }

    private Sum abatement() {
        return Sum.of("abatement", factors.abatementMwh());
    }

    private Sum supplementary() {
        return Sum.of("SEF", factors.sef()).times(Sum.of("Bs", energies.supplementaryGj()));
    }

    private Sum auxiliary() {
        return Sum.of("AEF", factors.aef()).times(Sum.of("Be", energies.auxiliaryGj()));
    }

    private Sum further(Sum tonnes) {
        // rule: how-we-read further factors: applied only where the firm's source names one.
        Sum located =
                factors.locationFactor()
                        .map(f -> tonnes.times(Sum.of("location factor", f)))
                        .orElse(tonnes);
        return factors.discountFactor()
                .map(f -> located.times(Sum.of("discount factor", f)))
                .orElse(located);
    }
}
