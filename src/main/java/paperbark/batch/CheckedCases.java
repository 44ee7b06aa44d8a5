package paperbark.batch;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import paperbark.entitlement.Entitlement;
import paperbark.entitlement.Entitlements;
import paperbark.entitlement.KeepUntil;
import paperbark.entitlement.RulesInUse;
import paperbark.finding.Finding;
import paperbark.finding.RuleRef;
import paperbark.output.CaseFile;
import paperbark.value.SchemeName;

/**
 * What a check says of a register's cases. Each is let go when it has been looked at, so that a
 * register of any length takes the memory of its findings alone.
 */
final class CheckedCases {
    private final List<Finding> findings = new ArrayList<>();
    private final Set<RuleRef> rules = new HashSet<>();
    private final Map<SchemeName, Entitlements> latest = new EnumMap<>(SchemeName.class);
    private Counts counts = Counts.NONE;

    private CheckedCases() {}

    /** Looks at the cases one after the other. */
    static Outcome of(Inputs inputs, Cases cases) {
        CheckedCases checked = new CheckedCases();
        inputs.findings().stream().filter(f -> f.job().isEmpty()).forEach(checked.findings::add);
        cases.each(checked::take);
        checked.findings.addAll(
                KeepUntil.of(cases.info().register(), checked.latest.values(), inputs.rulebook()));
        checked.findings.addAll(
                RulesInUse.old(checked.rules, inputs.rulebook(), cases.info().preparedOn()));
        return Outcome.of(checked.counts, Finding.inOrder(checked.findings), 0, Optional.empty());
    }

    private void take(CaseFile file) {
        findings.addAll(file.findings());
        counts = counts.plus(Counts.of(List.of(file)));
        Entitlements earned = file.entitlements();
        rules.addAll(RulesInUse.of(List.of(earned)));
        for (Entitlement each : earned.all()) {
            latest.merge(
                    each.scheme(),
                    earned,
                    (one, other) -> isLater(other, one, each.scheme()) ? other : one);
        }
    }

    private static boolean isLater(Entitlements some, Entitlements than, SchemeName scheme) {
        return some.of(scheme)
                .flatMap(Entitlement::lastDay)
                .filter(
                        day ->
                                than.of(scheme)
                                        .flatMap(Entitlement::lastDay)
                                        .filter(last -> !day.isAfter(last))
                                        .isEmpty())
                .isPresent();
    }
}
