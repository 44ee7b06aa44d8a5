package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Place;
import paperbark.finding.RuleRef;
import paperbark.rules.RuleLine;
import paperbark.rules.Rulebook;
import paperbark.value.Days;

/** The rule rows that a batch leaned on. */
public final class RulesInUse {
    /** Rules change with most years; a row that nobody compared for a year needs another look. */
    public static final int OLD_AFTER_MONTHS = 12;

    private RulesInUse() {}

    /** All rows used by the entitlements, each once, by table and line. */
    public static List<RuleRef> of(Collection<Entitlements> batch) {
        return batch.stream()
                .flatMap(e -> e.all().stream())
                .flatMap(e -> e.rules().stream())
                .distinct()
                .sorted(Comparator.comparing(RuleRef::table).thenComparing(RuleRef::row))
                .toList();
    }

    /** One note for each table used of which a row was last confirmed too long ago. */
    public static List<Finding> old(Collection<RuleRef> used, Rulebook rulebook, LocalDate today) {
        LocalDate limit = today.minusMonths(OLD_AFTER_MONTHS);
        return used.stream()
                .map(RuleRef::table)
                .distinct()
                .sorted()
                .flatMap(table -> oldest(table, used, rulebook, limit).stream())
                .toList();
    }

    private static Optional<Finding> oldest(
            String table, Collection<RuleRef> used, Rulebook rulebook, LocalDate limit) {
        return used.stream()
                .filter(ref -> ref.table().equals(table))
                .map(rulebook::line)
                .flatMap(Optional::stream)
                .filter(line -> line.confirmedOn().filter(limit::isAfter).isPresent())
                .min(
                        Comparator.comparing((RuleLine line) -> line.confirmedOn().orElseThrow())
                                .thenComparing(line -> line.ref().row()))
                .map(RulesInUse::note);
    }

    private static Finding note(RuleLine line) {
        return Finding.of(
                        FindingCode.RULE_OLD,
                        new Place.InRule(line.ref().table(), line.ref().row()),
                        "The row was last compared with its source on %s."
                                .formatted(Days.show(line.confirmedOn().orElseThrow())),
                        "Compare the row with its source again, and enter it with the new day in the rules of the firm's tables.")
                .by(line.ref());
    }
}
