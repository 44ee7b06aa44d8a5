package paperbark.entitlement;

import java.util.List;
import paperbark.finding.RuleRef;

/**
 * One line of the working, so that a clerk can redo it by hand.
 *
 * @param label what is worked out, e.g. {@code STCs for this job}
 * @param working the inputs or the sum with its numbers, e.g. {@code 27 x 5 / 10 = 13.5, fractions
 *     dropped}
 * @param result the outcome, e.g. {@code 13}
 * @param rules the rule rows used
 */
public record Step(String label, String working, String result, List<RuleRef> rules) {

    /** Keeps the rules from being changed. */
    public Step {
        rules = List.copyOf(rules);
    }
}
