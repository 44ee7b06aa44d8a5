package paperbark.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import paperbark.answer.Explanation;
import paperbark.answer.SchemeWorking;
import paperbark.entitlement.Step;
import paperbark.finding.RuleRef;
import paperbark.offer.Comparison;

/**
 * Tells the working of a job on the terminal: within 100 characters, or within 110 where supposed
 * facts stand beside it.
 */
final class WorkingText {
    private static final Columns FACTS = new Columns(26, 44, 24);
    private static final Columns STEPS = new Columns(26, 40, 18, 8);
    private static final Columns RULES = new Columns(4, 92);

    private final PrintWriter out;

    WorkingText(PrintWriter out) {
        this.out = out;
    }

    void print(Explanation explanation) {
        out.println(explanation.job() + ": " + explanation.where());
        Optional<Explanation.Side> supposed = explanation.supposed();
        if (supposed.isPresent()) {
            sideBySide(explanation, supposed.get());
        } else {
            alone(explanation.real());
            offers(explanation.offers());
        }
        section("Findings of the job as the register says");
        if (explanation.findings().isEmpty()) {
            out.println("  none");
        }
        FindingText text = new FindingText(out, true);
        explanation.findings().forEach(text::print);
    }

    private void alone(Explanation.Side side) {
        section("What the register says");
        side.facts().forEach(fact -> lines(FACTS.row(fact.name(), fact.value(), fact.from())));
        for (SchemeWorking scheme : side.schemes()) {
            heading(scheme, scheme.claimed());
            if (scheme.claimed()) {
                scheme.result().forEach(fact -> lines(FACTS.row(fact.name(), fact.value())));
                out.println();
                List<RuleRef> rules = rules(Stream.of(scheme));
                scheme.steps()
                        .forEach(
                                step ->
                                        lines(
                                                STEPS.row(
                                                        step.label(),
                                                        step.working(),
                                                        step.result(),
                                                        numbers(step, rules))));
                rules(rules);
            }
        }
    }

    private void offers(List<Comparison> all) {
        for (Comparison offers : all) {
            section("Offers for the " + offers.scheme().word() + "s as the register says");
            offers.steps().forEach(s -> lines(STEPS.row(s.label(), s.working(), s.result())));
        }
    }

    private void sideBySide(Explanation explanation, Explanation.Side supposed) {
        Explanation.Side real = explanation.real();
        SideBySide pair = new SideBySide(out);
        section("Facts");
        pair.heads();
        pair.facts(real.facts(), supposed.facts());
        for (int i = 0; i < real.schemes().size(); i++) {
            SchemeWorking one = real.schemes().get(i);
            SchemeWorking other = supposed.schemes().get(i);
            heading(one, one.claimed());
            if (one.claimed()) {
                pair.heads();
                pair.facts(one.result(), other.result());
                out.println();
                List<RuleRef> rules = rules(Stream.of(one, other));
                for (String label : labels(one, other)) {
                    pair.step(label, cell(one.step(label), rules), cell(other.step(label), rules));
                }
                rules(rules);
            }
        }
        section("What the schemes say of it");
        pair.heads();
        pair.findings(real.findings(), supposed.findings());
        section("Difference");
        explanation.differences().forEach(d -> out.println("  " + d.inWords()));
        if (explanation.differences().isEmpty()) {
            out.println("  none: the job claims no certificates");
        }
        out.println();
        out.println("  " + SideBySide.SIGN + " marks a line that differs.");
    }

    /** The labels of both, those of the second alone where they stand in it. */
    private static List<String> labels(SchemeWorking one, SchemeWorking other) {
        List<String> labels = new ArrayList<>(one.steps().stream().map(s -> s.label()).toList());
        int at = 0;
        for (Step line : other.steps()) {
            int known = labels.indexOf(line.label());
            if (known < 0) {
                labels.add(at, line.label());
                known = at;
            }
            at = known + 1;
        }
        return labels;
    }

    private static List<String> cell(Optional<Step> step, List<RuleRef> rules) {
        return step.map(
                        s ->
                                List.of(
                                        s.working(),
                                        ("= " + s.result() + " " + numbers(s, rules)).strip()))
                .orElse(List.of("-", ""));
    }

    private static List<RuleRef> rules(Stream<SchemeWorking> schemes) {
        Set<RuleRef> rules = new LinkedHashSet<>();
        schemes.flatMap(s -> s.steps().stream()).forEach(step -> rules.addAll(step.rules()));
        return List.copyOf(rules);
    }

    private static String numbers(Step step, List<RuleRef> rules) {
        return step.rules().stream()
                .distinct()
                .map(rule -> "[" + (rules.indexOf(rule) + 1) + "]")
                .collect(Collectors.joining(" "));
    }

    private void rules(List<RuleRef> rules) {
        if (rules.isEmpty()) {
            return;
        }
        out.println();
        out.println("  Rules");
        for (int i = 0; i < rules.size(); i++) {
            RuleRef rule = rules.get(i);
            String where = rule.row() > 0 ? rule.table() + ", row " + rule.row() : rule.table();
            lines(
                    RULES.row(
                            "[" + (i + 1) + "]",
                            RuleText.source(rule) + "; " + rule.sure() + "; " + where));
        }
    }

    private void heading(SchemeWorking scheme, boolean claimed) {
        section(
                scheme.scheme().word()
                        + ": "
                        + scheme.scheme().fullName()
                        + (claimed ? "" : ", not claimed for this job"));
    }

    private void section(String heading) {
        out.println();
        out.println(heading);
    }

    private void lines(List<String> lines) {
        lines.forEach(line -> out.println("  " + line));
    }
}
