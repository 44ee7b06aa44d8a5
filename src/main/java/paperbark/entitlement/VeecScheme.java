package paperbark.entitlement;

import java.time.LocalDate;
import java.time.Month;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.job.OldHeater;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.rules.VeecCondition;
import paperbark.value.Days;
import paperbark.value.SchemeName;
import paperbark.value.State;

/**
 * Victorian energy efficiency certificates for domestic water heaters.
 *
 * <p>One certificate is one tonne of CO2-e abated over the life of the upgrade. Old and new heater
 * decide the activity; the count comes from the factors of the Specifications or from a published
 * list, both of which the firm enters, because they could not be read. With neither, the job gets
 * an entitlement without a number and a check that says which table lacks what. Source: Victorian
 * Energy Efficiency Target Act 2007 ss 17 and 18, Regulations 2018, Specifications 2018; how each
 * was read is said in the page beside the rule tables.
 */
public final class VeecScheme implements Scheme {
    /** Label of the working step that gives the number of certificates. */
    public static final String COUNT = "VEECs for this job";

    /** Label of the working step that gives the tonnes before rounding. */
    public static final String TONNES = "Tonnes of CO2-e";

    /**
     * Stops after which the job earns nothing, whatever the sum says. A missing co-payment or a
     * missing record of the old heater can be mended, so the number is shown beside the stop.
     */
    private static final Set<FindingCode> EARNS_NOTHING =
            EnumSet.of(
                    FindingCode.RULE_MISSING,
                    FindingCode.ZONE_MISSING,
                    FindingCode.SECOND_HAND,
                    FindingCode.BEFORE_SCHEME,
                    FindingCode.AFTER_SCHEME,
                    FindingCode.CLAIM_CLOSED,
                    FindingCode.VEEC_NOT_VICTORIA,
                    FindingCode.VEEC_ACTIVITY_UNCLEAR,
                    FindingCode.VEEC_ACTIVITY_CLOSED,
                    FindingCode.VEEC_NOT_LISTED,
                    FindingCode.VEEC_TOO_LARGE,
                    FindingCode.VEEC_WARRANTY_SHORT);

    @Override
    public SchemeName name() {
        return SchemeName.VEEC;
    }

    @Override
    public Assessment assess(Job job, Rulebook rulebook, LocalDate today) {
        return job.claim(name()).claimed()
                ? new Case(this, job, rulebook, new Working(name(), job)).assess(today)
                : Assessment.NONE;
    }

    @Override
    public Set<JobFact> hangsOn() {
        return ClaimBasis.of(
                name(),
                Field.OLD_KIND,
                Field.OLD_DISABLED,
                Field.OLD_DISPOSAL,
                Field.OLD_REMOVED_DATE,
                Field.CO_PAYMENT);
    }

    @Override
    public Set<JobFact> alsoPrinted() {
        return JobFact.of(
                Field.COLLECTOR_SERIALS,
                Field.HEAT_PUMP_SERIAL,
                Field.ELECTRICIAN,
                Field.OLD_KIND,
                Field.OLD_MAKER,
                Field.OLD_MODEL,
                Field.OLD_SERIAL,
                Field.OLD_DISABLED,
                Field.OLD_DISPOSAL,
                Field.OLD_REMOVED_DATE,
                Field.FULL_PRICE,
                Field.CO_PAYMENT);
    }

    @Override
    public Optional<ClosingDate> closing(LocalDate done, Rulebook rulebook) {
        Optional<Dated<Setting>> months =
                rulebook.veecConditions().on(done, VeecCondition.CLAIM_AFTER_YEAR_MONTHS);
        Optional<Dated<Setting>> warn =
                rulebook.veecConditions().on(done, VeecCondition.CLOSING_WARN_DAYS);
        if (months.isEmpty() || warn.isEmpty()) {
            return Optional.empty();
        }
        // rule: veet-act-2007 s 17(2): created not later than 6 months after the end of the year in
        // which the reduction occurs, that is by 30 June.
        LocalDate newYear = LocalDate.of(done.getYear() + 1, Month.JANUARY, 1);
        LocalDate last = newYear.plusMonths(months.get().row().whole()).minusDays(1);
        // rule: how-we-read closing dates: urgent with fewer than so many days left.
        LocalDate urgentFrom = last.minusDays(warn.get().row().whole() - 1L);
        return Optional.of(
                new ClosingDate(
                        name(),
                        last,
                        urgentFrom,
                        "end of %d + %d months"
                                .formatted(done.getYear(), months.get().row().whole()),
                        months.get().ref()));
    }

    @Override
    public Optional<Dated<Setting>> keepYears(LocalDate created, Rulebook rulebook) {
        // rule: veet-act-2007 keeping records: six years, from memory.
        return rulebook.veecConditions().on(created, VeecCondition.KEEP_YEARS);
    }

    @Override
    public Set<String> sums() {
        return Set.of(TONNES, COUNT);
    }

    /** What was found on the way to the number. */
    private record Facts(
            Optional<String> activity, Optional<Integer> zone, Optional<LocalDate> lastDay) {
        static final Facts NONE = new Facts(Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** One job under the rules. */
    private record Case(VeecScheme scheme, Job job, Rulebook rules, Working working) {

        Assessment assess(LocalDate today) {
            SystemCheck.secondHand(working);
            Optional<LocalDate> day = day();
            if (!inVictoria() || day.isEmpty()) {
                return result(Facts.NONE, Optional.empty());
            }
            dayStep(day.get());
            if (!period(day.get()).holds(day.get(), working)) {
                return result(Facts.NONE, Optional.empty());
            }
            Optional<LocalDate> lastDay = lastDay(day.get(), today);
            new VeecConditions(working, rules).check(day.get(), today);
            Facts facts =
                    new Facts(
                            new VeecActivity(working, rules).find(day.get()),
                            new VeecZone(working, rules).find(day.get()),
                            lastDay);
            return result(facts, count(facts, day.get()));
        }

        private boolean inVictoria() {
            // rule: veet-act-2007 s 17: the scheme is for premises in Victoria.
            Optional<State> state = job.site().address().state();
            if (state.isPresent() && state.get() != State.VIC) {
                working.report(
                        working.at(
                                        Field.SITE_STATE,
                                        FindingCode.VEEC_NOT_VICTORIA,
                                        "The site is in %s.".formatted(state.get().fullName()),
                                        "Leave the VEECs out, or correct the state.")
                                .seeing(state.get().name()));
                return false;
            }
            return true;
        }

        /**
         * The work is done when the new heater is in and the old one is out, the later of the two.
         */
        private Optional<LocalDate> day() {
            // rule: veet-regs-2018 reg 11: when an activity is undertaken; the text was not read.
            Optional<LocalDate> installed = job.ruleDay();
            Optional<LocalDate> removed = job.oldHeater().flatMap(OldHeater::removedOn);
            return installed.map(i -> removed.filter(r -> r.isAfter(i)).orElse(i));
        }

        private void dayStep(LocalDate day) {
            boolean isRemoval = !job.ruleDay().equals(Optional.of(day));
            Field field = isRemoval ? Field.OLD_REMOVED_DATE : working.dayField();
            String what =
                    isRemoval
                            ? "old heater put out of use, "
                            : field == Field.INSTALLED_DATE ? "installed, " : "visit planned, ";
            working.step("Day of the work", what + working.from(field), Days.show(day));
        }

        private SchemePeriod period(LocalDate day) {
            return new SchemePeriod(
                    "VEEC",
                    condition(VeecCondition.SCHEME_FIRST_DAY, day),
                    condition(VeecCondition.SCHEME_LAST_DAY, day));
        }

        private Optional<LocalDate> lastDay(LocalDate day, LocalDate today) {
            condition(VeecCondition.CLAIM_AFTER_YEAR_MONTHS, day);
            condition(VeecCondition.CLOSING_WARN_DAYS, day);
            return working.isInstalled()
                    ? scheme.closing(day, rules).map(date -> date.tell(today, working))
                    : Optional.empty();
        }

        private Optional<Integer> count(Facts facts, LocalDate day) {
            Optional<Product> product = job.heater().product();
            if (product.isEmpty()) {
                return Optional.empty();
            }
            VeecNumber number = new VeecNumber(working, rules, day);
            Optional<VeecCount.Subject> subject =
                    facts.activity()
                            .flatMap(
                                    a ->
                                            facts.zone()
                                                    .map(
                                                            z ->
                                                                    new VeecCount.Subject(
                                                                            product.get(), a, z)));
            number.listed(product.get(), subject);
            if (working.isNothing(COUNT, EARNS_NOTHING)) {
                return Optional.empty();
            }
            return subject.flatMap(number::find);
        }

        private Optional<Dated<Setting>> condition(VeecCondition which, LocalDate day) {
            return working.rule(rules.veecConditions(), day, which);
        }

        private Assessment result(Facts facts, Optional<Integer> count) {
            return working.assessment(
                    new Entitlement(
                            SchemeName.VEEC,
                            count,
                            facts.zone(),
                            facts.activity(),
                            facts.lastDay(),
                            !working.isInstalled(),
                            working.steps()));
        }
    }
}
