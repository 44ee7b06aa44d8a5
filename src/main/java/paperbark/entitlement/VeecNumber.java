package paperbark.entitlement;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.firm.Product;
import paperbark.firm.VeecInputs;
import paperbark.firm.VeecInputs.Energies;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.rules.CountRounding;
import paperbark.rules.Dated;
import paperbark.rules.EmissionFactorRow;
import paperbark.rules.FactorRow;
import paperbark.rules.ListedCountRow;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.rules.VeecCondition;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/**
 * The number of VEECs with its steps and doubts.
 *
 * @param working where steps and findings go
 * @param rules the rules
 * @param day day of the work
 */
record VeecNumber(Working working, Rulebook rules, LocalDate day) {

    /** Reports a product that is not on the Victorian register on the day, in the zone. */
    void listed(Product product, Optional<VeecCount.Subject> subject) {
        boolean onRegister =
                subject.map(s -> VeecCount.energies(s, day).isPresent() || inList(s))
                        .orElseGet(
                                () ->
                                        product.veec()
                                                .filter(v -> v.listed().contains(day))
                                                .isPresent());
        if (onRegister) {
            return;
        }
        // rule: veet-regs-2018 reg 16: the product is on the register on the day of the work.
        String name = product.maker() + " " + product.model();
        String fact =
                product.veec()
                        .map(v -> unlisted(v, name, subject))
                        .orElse(
                                "The products table has no Victorian listing of %s."
                                        .formatted(name));
        working.report(
                working.at(
                                Field.MODEL,
                                FindingCode.VEEC_NOT_LISTED,
                                fact,
                                "Check model and date, or enter the listing in the products table.")
                        .seeing(product.model()));
    }

    private String unlisted(VeecInputs inputs, String name, Optional<VeecCount.Subject> subject) {
        return inputs.listed().contains(day)
                ? "The Victorian listing of %s in the products table has no figures for zone %s."
                        .formatted(name, subject.map(s -> s.zone()).orElseThrow())
                : "The products table has %s on the Victorian register %s, not on %s."
                        .formatted(name, inputs.listed(), Days.show(day));
    }

    private boolean inList(VeecCount.Subject subject) {
        return VeecCount.of(rules, subject, day).listed().isPresent();
    }

    /** The number; empty where the tables do not give one. */
    Optional<Integer> find(VeecCount.Subject subject) {
        Optional<Dated<Setting>> rounding =
                working.rule(rules.veecConditions(), day, VeecCondition.COUNT_ROUNDING);
        if (rounding.isEmpty()) {
            return Optional.empty();
        }
        VeecCount count = VeecCount.of(rules, subject, day);
        if (count.mixed().isPresent()) {
            mixed(count.mixed().get());
            return Optional.empty();
        }
        Optional<Integer> computed =
                count.computed().map(c -> computed(c, subject, rounding.get()));
        Optional<Integer> listed = count.listed().map(this::listed);
        if (computed.isEmpty() && listed.isEmpty()) {
            working.report(
                    working.at(
                            Field.of(SchemeName.VEEC, ClaimFact.COUNT),
                            FindingCode.VEEC_TABLE_MISSING,
                            "The number of VEECs cannot be worked out: %s."
                                    .formatted(String.join("; ", count.lacks())),
                            "Enter the factors or the listed count with its source in rules/veec in the firm's tables, or write the number on the form by hand."));
            return Optional.empty();
        }
        int number = decide(computed, listed);
        if (listed.isEmpty() || computed.filter(c -> c == number).isPresent()) {
            count.computed().ifPresent(c -> roundingDoubt(c, rounding.get()));
        }
        result(number, count, rounding.get());
        new VeecNeighbours(working, rules, subject).compare(day);
        doubts(number);
        return Optional.of(number);
    }

    private int computed(
            VeecCount.Computed sum, VeecCount.Subject subject, Dated<Setting> rounding) {
        Energies energies = VeecCount.energies(subject, day).orElseThrow();
        working.step(
                "Energies of the product",
                "%s %s, %s, zone %d"
                        .formatted(
                                subject.product().maker(),
                                subject.product().model(),
                                working.from(Field.MODEL),
                                subject.zone()),
                "Bs %s, Be %s GJ a year"
                        .formatted(
                                Sum.plain(energies.supplementaryGj()),
                                Sum.plain(energies.auxiliaryGj())),
                register(subject));
        figures(sum);
        working.step(
                VeecScheme.TONNES,
                sum.sum().inWords() + " = " + sum.sum().trace(),
                Sum.plain(sum.tonnes()) + " t",
                sum.rules().toArray(RuleRef[]::new));
        return rounding.row().rounding().whole(sum.tonnes());
    }

    /** Names each figure of the sum, so that it can be compared with its source. */
    private void figures(VeecCount.Computed sum) {
        FactorRow factors = sum.factors().row();
        working.step(
                "Factors of the activity",
                "abatement %s MWh, supplementary SEF %s, auxiliary AEF %s, %s, %s"
                        .formatted(
                                Sum.plain(factors.abatementMwh()),
                                Sum.plain(factors.sef()),
                                Sum.plain(factors.aef()),
                                further("location factor", factors.locationFactor()),
                                further("discount factor", factors.discountFactor())),
                "version " + factors.version(),
                sum.factors().ref());
        EmissionFactorRow emission = sum.emission().row();
        working.step(
                "Emission factor",
                "electricity, EEF, version %s of the Specifications".formatted(emission.version()),
                "%s t a MWh".formatted(Sum.plain(emission.tonnesPerMwh().orElseThrow())),
                sum.emission().ref());
    }

    private static String further(String name, Optional<BigDecimal> factor) {
        return factor.map(f -> name + " " + Sum.plain(f)).orElse("no " + name);
    }

    private void mixed(VeecCount.Mixed mixed) {
        String fact =
                "The factors are of version %s of the Specifications; on %s version %s is in force."
                        .formatted(
                                mixed.factors().row().version(),
                                Days.show(day),
                                mixed.inForce().row().version());
        working.report(
                working.at(
                                working.dayField(),
                                FindingCode.VEEC_VERSIONS_MIXED,
                                fact,
                                "End the rows of the old version in rules/veec in the firm's tables, and enter factors and emission factor of the version in force.")
                        .seeing(Days.show(day))
                        .by(mixed.factors().ref()));
        working.step(VeecScheme.COUNT, fact, "none", mixed.factors().ref(), mixed.inForce().ref());
    }

    private static RuleRef register(VeecCount.Subject subject) {
        VeecInputs inputs = subject.product().veec().orElseThrow();
        Energies energies = inputs.byZone().get(subject.zone());
        return new RuleRef(
                "products",
                inputs.row(),
                "Victorian register of products",
                "",
                RuleRef.ENTERED,
                "zone %d: veec_bs %s, veec_be %s, listed %s"
                        .formatted(
                                subject.zone(),
                                Sum.plain(energies.supplementaryGj()),
                                Sum.plain(energies.auxiliaryGj()),
                                inputs.listed()),
                "");
    }

    private int listed(Dated<ListedCountRow> row) {
        working.step(
                "VEECs as listed",
                "list read by the firm",
                Integer.toString(row.row().certificates()),
                row.ref());
        return row.row().certificates();
    }

    /** Where both ways give a number, the lower one is taken: an excess carries a penalty. */
    private int decide(Optional<Integer> computed, Optional<Integer> listed) {
        if (computed.isPresent() && listed.isPresent() && !computed.equals(listed)) {
            int lower = Math.min(computed.get(), listed.get());
            working.report(
                    working.at(
                            Field.MODEL,
                            FindingCode.VEEC_WAYS_DISAGREE,
                            "The factors give %d VEECs, the list says %d; %d is used."
                                    .formatted(computed.get(), listed.get(), lower),
                            "Compare both tables with their sources and correct the wrong one."));
            return lower;
        }
        return computed.or(() -> listed).orElseThrow();
    }

    private void roundingDoubt(VeecCount.Computed sum, Dated<Setting> rounding) {
        int used = rounding.row().rounding().whole(sum.tonnes());
        int dropped = CountRounding.DOWN.whole(sum.tonnes());
        if (used != dropped) {
            // rule: veet-act-2007 s 18(1A): nearest whole tonne, from memory; a secondary source
            // drops fractions instead.
            working.report(
                    working.at(
                                    Field.MODEL,
                                    FindingCode.VEEC_ROUNDING,
                                    "%s t give %d VEECs rounded and %d with fractions dropped."
                                            .formatted(Sum.plain(sum.tonnes()), used, dropped),
                                    "Compare with a job that was registered, or set count_rounding in rules/veec/conditions.csv in the firm's tables.")
                            .by(rounding.ref()));
        }
    }

    private void result(int number, VeecCount count, Dated<Setting> rounding) {
        RuleRef[] refs =
                count.computed().isPresent()
                        ? new RuleRef[] {rounding.ref()}
                        : new RuleRef[] {count.listed().orElseThrow().ref()};
        String how =
                count.computed()
                        .map(
                                c ->
                                        Sum.plain(c.tonnes())
                                                + " t, "
                                                + rounding.row().rounding().inWords()
                                                + count.listed()
                                                        .map(
                                                                l ->
                                                                        "; the lower of this and the list")
                                                        .orElse(""))
                        .orElse("as listed");
        working.step(VeecScheme.COUNT, how, Integer.toString(number), refs);
    }

    private void doubts(int number) {
        if (number == 0) {
            working.report(
                    working.at(
                            Field.MODEL,
                            FindingCode.COUNT_ZERO,
                            "The sum gives no whole VEEC.",
                            "Leave the VEECs out, and agree the price with the owner without them."));
        }
        int least = usual(VeecCondition.USUAL_LEAST_CERTIFICATES, number);
        int most = usual(VeecCondition.USUAL_MOST_CERTIFICATES, number);
        if (number < least || number > most) {
            working.report(
                    working.at(
                            Field.MODEL,
                            FindingCode.VEEC_UNUSUAL,
                            "%d VEECs lie outside the usual %d to %d."
                                    .formatted(number, least, most),
                            "Look at the factors and the energies of the product again."));
        }
        new DeclaredCount(
                        working.job().claim(SchemeName.VEEC),
                        Field.of(SchemeName.VEEC, ClaimFact.COUNT),
                        "VEEC")
                .compare(number, number, working);
    }

    private int usual(VeecCondition which, int otherwise) {
        return rules.veecConditions().on(day, which).map(s -> s.row().whole()).orElse(otherwise);
    }
}
