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

/**
 * The two honest ways to a number of VEECs.
 *
 * @param computed from the factors; empty where one is missing
 * @param listed from a published list; empty where the product is not in it
 * @param lacks what the tables lack, each the end of a sentence
 */
record VeecCount(
        Optional<Computed> computed, Optional<Dated<ListedCountRow>> listed, List<String> lacks) {

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
     * @param tonnes unrounded
     * @param working the sum with its numbers
     * @param rules the rows used
     */
    record Computed(BigDecimal tonnes, String working, List<RuleRef> rules) {}

    /** Looks both ways for a day. */
    static VeecCount of(Rulebook rules, Subject subject, LocalDate day) {
        List<String> lacks = new ArrayList<>();
        Optional<Computed> computed = compute(rules, subject, day, lacks);
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
        return new VeecCount(computed, listed, lacks);
    }

    private static Optional<Computed> compute(
            Rulebook rules, Subject subject, LocalDate day, List<String> lacks) {
        FactorRow.Key key = new FactorRow.Key(subject.activity(), subject.zone());
        Optional<Dated<FactorRow>> factors = rules.factors().on(day, key);
        Optional<Dated<EmissionFactorRow>> emission = rules.emissionFactors().on(day, Unkeyed.ALL);
        Optional<Energies> energies = energies(subject, day);
        if (factors.isEmpty()) {
            lacks.add(rules.factors().missing(day, key));
        }
        if (emission.isEmpty()) {
            lacks.add(rules.emissionFactors().missing(day, Unkeyed.ALL));
        }
        if (energies.isEmpty()) {
            lacks.add("the products table has no Bs and Be for zone " + subject.zone());
        }
        if (factors.isEmpty() || emission.isEmpty() || energies.isEmpty()) {
            return Optional.empty();
        }
        VeecFormula formula =
                new VeecFormula(
                        factors.get().row(), energies.get(), emission.get().row().tonnesPerMwh());
        Optional<BigDecimal> tonnes = formula.tonnes(subject.activity());
        if (tonnes.isEmpty()) {
            lacks.add("the equation of activity " + subject.activity() + " was not read");
        }
        return tonnes.map(
                t ->
                        new Computed(
                                t,
                                formula.working(subject.activity()),
                                List.of(factors.get().ref(), emission.get().ref())));
    }

    /** Bs and Be as listed on the day. */
    static Optional<Energies> energies(Subject subject, LocalDate day) {
        return subject.product()
                .veec()
                .filter(inputs -> inputs.listed().contains(day))
                .map(inputs -> inputs.byZone().get(subject.zone()));
    }
}
