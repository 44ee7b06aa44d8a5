package paperbark.entitlement;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.RuleRef;
import paperbark.firm.Product;
import paperbark.firm.VeecInputs.Energies;
import paperbark.rules.Dated;
import paperbark.rules.EmissionFactorRow;
import paperbark.rules.FactorRow;
import paperbark.rules.ListedCountRow;
import paperbark.rules.Rulebook;
import paperbark.rules.Unkeyed;
import paperbark.value.Days;

/**
 * The two honest ways to a number of VEECs.
 *
 * @param computed from the factors; empty where one is missing
 * @param listed from a published list; empty where the product is not in it
 * @param lacks what the tables lack, each the end of a sentence
 * @param mixed factors that must not be used on the day; nothing is computed then
 */
record VeecCount(
        Optional<Computed> computed,
        Optional<Dated<ListedCountRow>> listed,
        List<String> lacks,
        Optional<Mixed> mixed) {

    /**
     * What is counted.
     *
     * @param product the new heater
     * @param activity code such as {@code 1D}
     * @param zone climate zone
     */
    record Subject(Product product, String activity, int zone) {}

    /**
     * A sum that could be done.
     *
     * @param sum the tonnes, unrounded
     * @param factors the row of the activity's factors
     * @param emission the row of the emission factor
     */
    record Computed(Sum sum, Dated<FactorRow> factors, Dated<EmissionFactorRow> emission) {

        BigDecimal tonnes() {
            return sum.value();
        }

        List<RuleRef> rules() {
            return List.of(factors.ref(), emission.ref());
        }
    }

    /**
     * Factors of another version of the Specifications than the one in force.
     *
     * @param factors the row of the activity's factors
     * @param inForce the row of the version in force
     */
    record Mixed(Dated<FactorRow> factors, Dated<EmissionFactorRow> inForce) {}

    /** Looks both ways for a day. */
    static VeecCount of(Rulebook rules, Subject subject, LocalDate day) {
        List<String> lacks = new ArrayList<>();
        Optional<Mixed> mixed = mixed(rules, subject, day);
        Optional<Computed> computed =
                mixed.isPresent() ? Optional.empty() : compute(rules, subject, day, lacks);
        ListedCountRow.Key key =
                new ListedCountRow.Key(
                        subject.product().maker(),
                        subject.product().model(),
                        subject.activity(),
                        subject.zone());
        Optional<Dated<ListedCountRow>> listed = rules.listedCounts().on(day, key);
        if (listed.isEmpty()) {
            lacks.add(rules.listedCounts().missing(day, key));
        }
        return new VeecCount(computed, listed, lacks, mixed);
    }

    private static Optional<Mixed> mixed(Rulebook rules, Subject subject, LocalDate day) {
        // rule: how-we-read VEEC equations: factors and emission factor belong to one version of
        // the Specifications; a table is never carried to the next.
        return rules.factors()
                .on(day, key(subject))
                .flatMap(
                        factors ->
                                rules.emissionFactors()
                                        .on(day, Unkeyed.ALL)
                                        .filter(e -> !isSame(e.row(), factors.row()))
                                        .map(e -> new Mixed(factors, e)));
    }

    private static boolean isSame(EmissionFactorRow inForce, FactorRow factors) {
        return inForce.version().equalsIgnoreCase(factors.version());
    }

    private static FactorRow.Key key(Subject subject) {
        return new FactorRow.Key(subject.activity(), subject.zone());
    }

    private static Optional<Computed> compute(
            Rulebook rules, Subject subject, LocalDate day, List<String> lacks) {
        Optional<Dated<FactorRow>> factors = rules.factors().on(day, key(subject));
        Optional<Dated<EmissionFactorRow>> emission = rules.emissionFactors().on(day, Unkeyed.ALL);
        Optional<BigDecimal> emissionFactor = emission.flatMap(e -> e.row().tonnesPerMwh());
        Optional<Energies> energies = energies(subject, day);
        if (factors.isEmpty()) {
            lacks.add(rules.factors().missing(day, key(subject)));
        }
        if (emissionFactor.isEmpty()) {
            lacks.add(
                    emission.map(VeecCount::onlyTheName)
                            .orElseGet(() -> rules.emissionFactors().missing(day, Unkeyed.ALL)));
        }
        if (energies.isEmpty()) {
            lacks.add("the products table has no Bs and Be for zone " + subject.zone());
        }
        if (factors.isEmpty() || emissionFactor.isEmpty() || energies.isEmpty()) {
            return Optional.empty();
        }
        VeecFormula formula =
                new VeecFormula(factors.get().row(), energies.get(), emissionFactor.get());
        Optional<Sum> tonnes = formula.tonnes(subject.activity(), day);
        if (tonnes.isEmpty()) {
            lacks.add(
                    "the equation of activity %s for %s was not read"
                            .formatted(subject.activity(), Days.show(day)));
        }
        return tonnes.map(sum -> new Computed(sum, factors.get(), emission.get()));
    }

    private static String onlyTheName(Dated<EmissionFactorRow> version) {
        return "%s has no emission factor of version %s of the Specifications (row %d: %s)"
                .formatted(
                        version.ref().table(),
                        version.row().version(),
                        version.ref().row(),
                        version.note());
    }

    /** Bs and Be as listed on the day. */
    static Optional<Energies> energies(Subject subject, LocalDate day) {
        return subject.product()
                .veec()
                .filter(inputs -> inputs.listed().contains(day))
                .map(inputs -> inputs.byZone().get(subject.zone()));
    }
}
