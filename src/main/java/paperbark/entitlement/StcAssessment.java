package paperbark.entitlement;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.rules.StcLimit;
import paperbark.rules.Unkeyed;
import paperbark.rules.YearsRow;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/** One job under the STC rules. */
final class StcAssessment {
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

    private final Job job;
    private final Rulebook rules;
    private final Working working;

    StcAssessment(Job job, Rulebook rules) {
        this.job = job;
        this.rules = rules;
        this.working = new Working(SchemeName.STC, job);
    }

    Assessment run(LocalDate today) {
        SystemChecks.secondHand(working);
        SystemChecks.complete(working);
        if (job.ruleDay().isEmpty()) {
            return result(Optional.empty(), Optional.empty(), Optional.empty());
        }
        LocalDate day = job.ruleDay().get();
        dayStep(day);
        if (!period(day).holds(day, working)) {
            return result(Optional.empty(), Optional.empty(), Optional.empty());
        }
        Optional<LocalDate> lastDay = lastDay(day, today);
        job.heater().product().ifPresent(p -> new StcSizes(working, rules).check(p, day, today));
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
                "STC", limit(StcLimit.SCHEME_FIRST_DAY, day), limit(StcLimit.SCHEME_LAST_DAY, day));
    }

    private Optional<LocalDate> lastDay(LocalDate day, LocalDate today) {
        Optional<Dated<Setting>> months = limit(StcLimit.CLAIM_MONTHS, day);
        Optional<Dated<Setting>> warn = limit(StcLimit.WARN_AFTER_DAYS, day);
        if (!working.isInstalled() || months.isEmpty() || warn.isEmpty()) {
            return Optional.empty();
        }
        // rule: ree-act-2000 s 21(2): certificates are created within 12 months after installation;
        // the same date next year is taken as the last safe day, 29 Feb becoming 28 Feb.
        LocalDate last = day.plusMonths(months.get().row().whole());
        working.step(
                "Last safe day for creating STCs",
                Days.show(day) + " + " + months.get().row().whole() + " months",
                Days.show(last),
                months.get().ref());
        // "More than" so many days old: the first urgent day is the one after.
        LocalDate urgentFrom = day.plusDays(warn.get().row().whole() + 1L);
        new ClosingDate("STC", last, urgentFrom).compare(today, working);
        return Optional.of(last);
    }

    private Optional<Integer> count(LocalDate day, Optional<Integer> zone) {
        Optional<Integer> listed =
                job.heater().product().flatMap(p -> new StcListing(working).figure(p, day, zone));
        Optional<Dated<YearsRow>> years = working.rule(rules.years(), day, Unkeyed.ALL);
        years.ifPresent(
                y ->
                        working.step(
                                "Years that count",
                                "installed in " + day.getYear(),
                                Integer.toString(y.row().years()),
                                y.ref()));
        Optional<Dated<Setting>> basis = limit(StcLimit.LISTING_YEARS, day);
        Optional<Dated<Setting>> rounding = limit(StcLimit.COUNT_ROUNDING, day);
        Optional<Finding> nothing = working.first(EARNS_NOTHING);
        if (nothing.isPresent()) {
            working.step(
                    StcScheme.COUNT,
                    nothing.get().fact(),
                    "none",
                    nothing.get().rule().stream().toArray(RuleRef[]::new));
            return Optional.empty();
        }
        // A rule that is missing is among the stops above; the listed figure may lack its facts.
        return listed.map(
                figure ->
                        sum(
                                day,
                                figure,
                                years.orElseThrow().row().years(),
                                List.of(basis.orElseThrow(), rounding.orElseThrow())));
    }

    private int sum(LocalDate day, int listed, int years, List<Dated<Setting>> limits) {
        StcFormula formula =
                new StcFormula(limits.get(0).row().whole(), limits.get(1).row().rounding());
        int count = formula.count(listed, years);
        working.step(
                StcScheme.COUNT,
                formula.working(listed, years),
                Integer.toString(count),
                limits.get(0).ref(),
                limits.get(1).ref());
        new StcNeighbours(working, rules, formula).compare(day, listed);
        declared(formula, listed, years);
        return count;
    }

    private void declared(StcFormula formula, int listed, int years) {
        int count = formula.count(listed, years);
        if (count == 0) {
            working.report(
                    working.at(
                            Field.MODEL,
                            FindingCode.COUNT_ZERO,
                            "The sum gives less than one whole STC.",
                            "Leave the STCs out, and agree the price with the owner without them."));
        }
        boolean said = job.claim(SchemeName.STC).declaredCount().isPresent();
        boolean open = said || formula.canBeHigher(listed, years);
        new DeclaredCount(
                        job.claim(SchemeName.STC), Field.of(SchemeName.STC, ClaimFact.COUNT), "STC")
                .compare(count, open ? formula.highest(listed, years) : count, working);
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
