package paperbark.rules;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.RuleRef;
import paperbark.value.DateRange;

/**
 * A rule row in words, for lists of what is in force.
 *
 * @param ref table, line, source and confidence
 * @param key what it speaks of; empty in a table without keys
 * @param values its values with their headings; empty for a gap on purpose
 * @param inForce first and last day
 * @param confirmedOn day on which somebody last compared it with its source
 * @param note remark in the table; may be empty
 */
public record RuleLine(
        RuleRef ref,
        String key,
        String values,
        DateRange inForce,
        Optional<LocalDate> confirmedOn,
        String note) {}
