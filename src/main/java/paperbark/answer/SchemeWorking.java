package paperbark.answer;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.answer.Explanation.Fact;
import paperbark.entitlement.Entitlement;
import paperbark.finding.RuleRef;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/**
 * The working of one job under one scheme, for people and other programs.
 *
 * @param scheme the scheme's word
 * @param fullName the name of its certificate in full, singular
 * @param claimed whether the job claims under it; everything else is empty otherwise
 * @param certificates whole number of certificates, where there is one
 * @param zone zone used
 * @param activity the scheme's activity, where it has any
 * @param lastDay last safe day for creating the certificates
 * @param provisional whether the day of installation is only planned
 * @param demo whether an invented figure went into it
 * @param steps the working, in order
 */
public record SchemeWorking(
        String scheme,
        String fullName,
        boolean claimed,
        Optional<Integer> certificates,
        Optional<Integer> zone,
        Optional<String> activity,
        Optional<LocalDate> lastDay,
        boolean provisional,
        boolean demo,
        List<Line> steps) {

    /** Keeps the steps from being changed. */
    public SchemeWorking {
        steps = List.copyOf(steps);
    }

    /**
     * One step.
     *
     * @param label what is worked out
     * @param working the inputs or the sum with its numbers
     * @param result the outcome
     * @param rules the rule rows used
     */
    public record Line(String label, String working, String result, List<RuleRef> rules) {

        /** Keeps the rules from being changed. */
        public Line {
            rules = List.copyOf(rules);
        }
    }

    static SchemeWorking of(SchemeName name, Optional<Entitlement> entitlement) {
        return new SchemeWorking(
                name.word(),
                name.fullName(),
                entitlement.isPresent(),
                entitlement.flatMap(Entitlement::certificates),
                entitlement.flatMap(Entitlement::zone),
                entitlement.flatMap(Entitlement::activity),
                entitlement.flatMap(Entitlement::lastDay),
                entitlement.map(Entitlement::provisional).orElse(false),
                entitlement.map(Entitlement::isDemo).orElse(false),
                entitlement.map(Entitlement::steps).orElse(List.of()).stream()
                        .map(s -> new Line(s.label(), s.working(), s.result(), s.rules()))
                        .toList());
    }

    /** What came out, in words. */
    public List<Fact> result() {
        List<Fact> result = new ArrayList<>();
        add(
                result,
                "Certificates",
                certificates.map(String::valueOf).orElse("cannot be worked out"));
        zone.ifPresent(z -> add(result, "Zone", z.toString()));
        activity.ifPresent(a -> add(result, "Activity", a));
        add(
                result,
                "Last safe day",
                lastDay.map(Days::show).orElse("open until the heater is installed"));
        if (provisional) {
            add(result, "Provisional", "the day of installation is only planned");
        }
        if (demo) {
            add(result, "Never claim with it", "figures invented for the demonstration went in");
        }
        return result;
    }

    private static void add(List<Fact> result, String name, String value) {
        result.add(new Fact(name, value, ""));
    }

    /** The step of that label. */
    public Optional<Line> step(String label) {
        return steps.stream().filter(s -> s.label().equals(label)).findFirst();
    }
}
