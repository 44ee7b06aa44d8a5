package paperbark.entitlement;

import static java.time.temporal.TemporalAdjusters.lastDayOfYear;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import paperbark.finding.FindingCode;
import paperbark.firm.Listing.Basis;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.JobFact;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.rules.StcLimit;
import paperbark.rules.Unkeyed;
import paperbark.rules.YearsRow;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/**
 * Small-scale technology certificates for solar water heaters and air-source heat pumps.
 *
 * <p>The federal register gives a figure for model, zone and period on a ten-year basis; of it, an
 * installation earns the years left until the end of 2030. Source: Renewable Energy (Electricity)
 * Act 2000 ss 21 and 22, Regulations 2001 regs 19 to 19B; how each was read is said in the page
 * beside the rule tables.
 *
 * <p>A job of which a needed fact is missing gets an entitlement without a number; the missing fact
 * is reported by the job's own checks.
 */
public final class StcScheme implements Scheme {
    /** Label of the working step that gives the number of certificates. */
    public static final String COUNT = "STCs for this job";

    /** Stops after which the job earns nothing, whatever the sum says. */
    private static final Set<FindingCode> EARNS_NOTHING =
            EnumSet.of(
                    FindingCode.RULE_MISSING,
                    FindingCode.ZONE_MISSING,
                    FindingCode.NOT_LISTED_FOR_ZONE,
                    FindingCode.MODEL_NOT_LISTED_THEN,
                    FindingCode.HEAT_PUMP_TOO_LARGE,
                    FindingCode.SOLAR_DECLARATION_MISSING,
                    FindingCode.SECOND_HAND,
                    FindingCode.SYSTEM_INCOMPLETE,
                    FindingCode.BEFORE_SCHEME,
                    FindingCode.AFTER_SCHEME,
                    FindingCode.CLAIM_CLOSED);

    @Override
    public SchemeName name() {
        return SchemeName.STC;
    }

    @Override
    public Assessment assess(Job job, Rulebook rulebook, LocalDate today) {
        return job.claim(name()).claimed()
                ? new Case(this, job, rulebook, new Working(name(), job)).assess(today)
                : Assessment.NONE;
    }

    @Override
    public Optional<ClosingDate> closing(LocalDate done, Rulebook rulebook) {
        Optional<Dated<Setting>> months = rulebook.stcLimits().on(done, StcLimit.CLAIM_MONTHS);
        Optional<Dated<Setting>> warn = rulebook.stcLimits().on(done, StcLimit.WARN_AFTER_DAYS);
        if (months.isEmpty() || warn.isEmpty()) {
            return Optional.empty();
        }
        // rule: ree-act-2000 s 21(2): certificates are created within 12 months after installation;
        // the same date next year is taken as the last safe day, 29 Feb becoming 28 Feb.
        LocalDate last = done.plusMonths(months.get().row().whole());
        // rule: ret-agents registration: checks of an account take weeks; "more than" so many days
        // old is urgent, so the first urgent day is the one after.
        LocalDate urgentFrom = done.plusDays(warn.get().row().whole() + 1L);
        return Optional.of(
                new ClosingDate(
                        name(),
                        last,
                        urgentFrom,
                        Days.show(done) + " + " + months.get().row().whole() + " months",
                        months.get().ref()));
    }

    @Override
    public Optional<LocalDate> sameUntil(LocalDate planned) {
        // rule: ree-regs-2001 reg 19A: the years that count are those of the year of installation.
        return Optional.of(planned.with(lastDayOfYear()));
    }

    @Override
    public Optional<Dated<Setting>> keepYears(LocalDate created, Rulebook rulebook) {
        // rule: cer-documents keeping records: counted from the day of creation.
        return rulebook.stcLimits().on(created, StcLimit.KEEP_YEARS);
    }

    /** One job under the rules. */
    private record Case(StcScheme scheme, Job job, Rulebook rules, Working working) {

        Assessment assess(LocalDate today) {
            SystemCheck.secondHand(working);
            SystemCheck.complete(working);
            if (job.ruleDay().isEmpty()) {
                return result(Optional.empty(), Optional.empty(), Optional.empty());
            }
            LocalDate day = job.ruleDay().get();
            dayStep(day);
            if (!period(day).holds(day, working)) {
                return result(Optional.empty(), Optional.empty(), Optional.empty());
            }
            Optional<LocalDate> lastDay = lastDay(day, today);
            job.heater()
                    .product()
                    .ifPresent(p -> new StcSizes(working, rules).check(p, day, today));
            Optional<Integer> zone = new StcZone(working, rules).find(day);
            Optional<Integer> count = count(day, zone);
            return result(count, zone, lastDay);
        }

        private void dayStep(LocalDate day) {
            Field field = working.dayField();
            working.step(
                    "Day of installation",
                    (field == Field.INSTALLED_DATE ? "installed, " : "visit planned, ")
                            + working.from(field),
                    Days.show(day));
        }

        private SchemePeriod period(LocalDate day) {
            return new SchemePeriod(
                    "STC",
                    limit(StcLimit.SCHEME_FIRST_DAY, day),
                    limit(StcLimit.SCHEME_LAST_DAY, day));
        }

        private Optional<LocalDate> lastDay(LocalDate day, LocalDate today) {
            limit(StcLimit.CLAIM_MONTHS, day);
            limit(StcLimit.WARN_AFTER_DAYS, day);
            return working.isInstalled()
                    ? scheme.closing(day, rules).map(date -> date.tell(today, working))
                    : Optional.empty();
        }

        private Optional<Integer> count(LocalDate day, Optional<Integer> zone) {
            Optional<StcListing.Figure> listed =
                    job.heater()
                            .product()
                            .flatMap(p -> new StcListing(working).figure(p, day, zone));
            // rule: ree-regs-2001 reg 19A: a number for model, zone and period stands as it is.
            boolean forPeriod = listed.filter(f -> f.basis() == Basis.PERIOD).isPresent();
            return forPeriod
                    ? asListed(day, listed.get().stcs())
                    : scaled(day, listed.map(StcListing.Figure::stcs));
        }

        private Optional<Integer> asListed(LocalDate day, int count) {
            if (working.isNothing(COUNT, EARNS_NOTHING)) {
                return Optional.empty();
            }
            working.step(
                    COUNT,
                    "as the register has it for model, zone and period",
                    Integer.toString(count));
            zero(count);
            rules.years()
                    .on(day, Unkeyed.ALL)
                    .flatMap(years -> formula(day).map(f -> f.count(count, years.row().years())))
                    .filter(scaled -> scaled != count && isDeclared(scaled))
                    .ifPresent(scaled -> doubt("taken as it stands for the period"));
            new DeclaredCount(
                            job.claim(SchemeName.STC),
                            Field.of(SchemeName.STC, ClaimFact.COUNT),
                            "STC")
                    .compare(count, count, working);
            return Optional.of(count);
        }

        private Optional<Integer> scaled(LocalDate day, Optional<Integer> listed) {
            Optional<Dated<YearsRow>> years = working.rule(rules.years(), day, Unkeyed.ALL);
            years.ifPresent(
                    y ->
                            working.step(
                                    "Years that count",
                                    "installed in " + day.getYear(),
                                    Integer.toString(y.row().years()),
                                    y.ref()));
            limit(StcLimit.LISTING_YEARS, day);
            limit(StcLimit.COUNT_ROUNDING, day);
            if (working.isNothing(COUNT, EARNS_NOTHING)) {
                return Optional.empty();
            }
            // A rule that is missing is among the stops above; the figure may lack its facts.
            return listed.flatMap(
                    figure ->
                            formula(day)
                                    .map(
                                            f ->
                                                    sum(
                                                            day,
                                                            f,
                                                            figure,
                                                            years.orElseThrow().row().years())));
        }

        private Optional<StcFormula> formula(LocalDate day) {
            return rules.stcLimits()
                    .on(day, StcLimit.LISTING_YEARS)
                    .flatMap(
                            basis ->
                                    rules.stcLimits()
                                            .on(day, StcLimit.COUNT_ROUNDING)
                                            .flatMap(
                                                    rounding ->
                                                            StcFormula.on(
                                                                    day,
                                                                    basis.row().whole(),
                                                                    rounding.row().rounding())));
        }

        private int sum(LocalDate day, StcFormula formula, int listed, int years) {
            int count = formula.count(listed, years);
            working.step(
                    COUNT,
                    formula.working(listed, years),
                    Integer.toString(count),
                    limit(StcLimit.LISTING_YEARS, day).orElseThrow().ref(),
                    limit(StcLimit.COUNT_ROUNDING, day).orElseThrow().ref());
            new StcNeighbours(working, rules, formula).compare(day, listed);
            zero(count);
            if (count != listed && isDeclared(listed)) {
                doubt("taken to be over ten years");
            }
            boolean said = job.claim(SchemeName.STC).declaredCount().isPresent();
            boolean open = said || formula.canBeHigher(listed, years);
            new DeclaredCount(
                            job.claim(SchemeName.STC),
                            Field.of(SchemeName.STC, ClaimFact.COUNT),
                            "STC")
                    .compare(count, open ? formula.highest(listed, years) : count, working);
            return count;
        }

        private void zero(int count) {
            if (count == 0) {
                working.report(
                        working.at(
                                Field.MODEL,
                                FindingCode.COUNT_ZERO,
                                "The sum gives less than one whole STC.",
                                "Leave the STCs out, and agree the price with the owner without them."));
            }
        }

        private boolean isDeclared(int count) {
            return job.claim(SchemeName.STC).declaredCount().equals(Optional.of(count));
        }

        private void doubt(String taken) {
            int said = job.claim(SchemeName.STC).declaredCount().orElseThrow();
            working.report(
                    working.at(
                                    Field.of(SchemeName.STC, ClaimFact.COUNT),
                                    FindingCode.STC_BASIS_DOUBTFUL,
                                    "The register's %d STCs would be right on the other basis; the figure of the products table is %s."
                                            .formatted(said, taken),
                                    "Compare the model's figure and stcs_basis in the products table with the register of products.")
                            .seeing(Integer.toString(said)));
        }

        private Optional<Dated<Setting>> limit(StcLimit limit, LocalDate day) {
            return working.rule(rules.stcLimits(), day, limit);
        }

        private Assessment result(
                Optional<Integer> count, Optional<Integer> zone, Optional<LocalDate> lastDay) {
            return working.assessment(
                    new Entitlement(
                            SchemeName.STC,
                            count,
                            zone,
                            Optional.empty(),
                            lastDay,
                            !working.isInstalled(),
                            working.steps()));
        }
    }

    @Override
    public Set<JobFact> hangsOn() {
        return ClaimBasis.of(name(), Field.COMPLETE_SYSTEM, Field.DECLARATIONS_DATE);
    }

    @Override
    public Set<JobFact> alsoPrinted() {
        return JobFact.of(
                Field.SITE_POSITION, Field.OLD_KIND, Field.NEW_SYSTEM, Field.DECLARATIONS_DATE);
    }

    @Override
    public boolean tellsOfOthers() {
        return false;
    }
}
