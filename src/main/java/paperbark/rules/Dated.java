package paperbark.rules;

import paperbark.finding.RuleRef;
import paperbark.value.DateRange;

/**
 * A typed row that speaks for the day asked, with where it comes from.
 *
 * @param row what it says
 * @param ref table, line, source and confidence
 * @param inForce the days for which it speaks
 * @param note remark in the table; may be empty
 */
public record Dated<R>(R row, RuleRef ref, DateRange inForce, String note) {}
