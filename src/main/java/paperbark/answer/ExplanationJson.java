package paperbark.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import paperbark.finding.Finding;
import paperbark.finding.RuleRef;

/** The working of a job for other programs. */
public final class ExplanationJson {
    private ExplanationJson() {}

    /**
     * One JSON object: {@code job}, {@code where}, {@code register} and, where facts are supposed,
     * {@code supposed}, each with facts, schemes (certificates, zone, activity, last day, steps
     * with their rules) and the schemes' findings; {@code differences} in certificates by scheme;
     * {@code offers} by scheme with their steps; {@code findings} of the job as {@link
     * FindingsJson} has them. What is not known is not there.
     */
    public static String of(Explanation explanation) {
        ObjectNode root = FindingsJson.object();
        root.put("job", explanation.job());
        root.put("where", explanation.where());
        side(root.putObject("register"), explanation.real());
        explanation.supposed().ifPresent(other -> side(root.putObject("supposed"), other));
        ArrayNode differences = root.putArray("differences");
        for (Explanation.Difference difference : explanation.differences()) {
            ObjectNode node = differences.addObject();
            node.put("scheme", difference.scheme());
            difference.real().ifPresent(n -> node.put("register", n));
            difference.supposed().ifPresent(n -> node.put("supposed", n));
            difference.more().ifPresent(n -> node.put("more", n));
        }
        ArrayNode offers = root.putArray("offers");
        for (OffersWorking working : explanation.offers()) {
            ObjectNode node = offers.addObject().put("scheme", working.scheme());
            steps(node, working.steps());
        }
        findings(root, explanation.findings());
        return FindingsJson.text(root);
    }

    private static void side(ObjectNode node, Explanation.Side side) {
        ArrayNode facts = node.putArray("facts");
        for (Explanation.Fact fact : side.facts()) {
            facts.addObject()
                    .put("name", fact.name())
                    .put("value", fact.value())
                    .put("from", fact.from());
        }
        ArrayNode schemes = node.putArray("schemes");
        side.schemes().forEach(scheme -> scheme(schemes.addObject(), scheme));
        findings(node, side.findings());
    }

    private static void findings(ObjectNode node, Iterable<Finding> findings) {
        ArrayNode array = node.putArray("findings");
        findings.forEach(f -> array.add(FindingsJson.node(f)));
    }

    private static void scheme(ObjectNode node, SchemeWorking scheme) {
        node.put("scheme", scheme.scheme());
        node.put("claimed", scheme.claimed());
        scheme.certificates().ifPresent(n -> node.put("certificates", n));
        scheme.zone().ifPresent(z -> node.put("zone", z));
        scheme.activity().ifPresent(a -> node.put("activity", a));
        scheme.lastDay().ifPresent(day -> node.put("lastDay", day.toString()));
        node.put("provisional", scheme.provisional());
        node.put("demo", scheme.demo());
        steps(node, scheme.steps());
    }

    private static void steps(ObjectNode node, Iterable<SchemeWorking.Line> lines) {
        ArrayNode steps = node.putArray("steps");
        for (SchemeWorking.Line line : lines) {
            ObjectNode step = steps.addObject();
            step.put("label", line.label());
            step.put("working", line.working());
            step.put("result", line.result());
            ArrayNode rules = step.putArray("rules");
            line.rules().forEach(rule -> rule(rules.addObject(), rule));
        }
    }

    static void rule(ObjectNode node, RuleRef rule) {
        node.put("table", rule.table());
        node.put("row", rule.row());
        node.put("source", rule.source());
        node.put("pinpoint", rule.pinpoint());
        node.put("confidence", rule.confidence());
        node.put("sure", rule.sure());
    }
}
