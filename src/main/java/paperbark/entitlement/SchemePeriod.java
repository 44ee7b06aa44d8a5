package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.rules.Dated;
import paperbark.rules.Setting;
import paperbark.value.Days;

/**
 * The days on which a scheme runs.
 *
 * @param word the scheme's certificates, singular
 * @param first first day, where a rule says it
 * @param last last day, where a rule says it
 */
record SchemePeriod(String word, Optional<Dated<Setting>> first, Optional<Dated<Setting>> last) {

    /** Whether the day lies within; reports it if not. */
    boolean holds(LocalDate day, Working working) {
        if (first.isPresent() && day.isBefore(first.get().row().day())) {
            report(FindingCode.BEFORE_SCHEME, first.get(), "begin with", working);
            return false;
        }
        if (last.isPresent() && day.isAfter(last.get().row().day())) {
            report(FindingCode.AFTER_SCHEME, last.get(), "end with", working);
            return false;
        }
        return first.isPresent() && last.isPresent();
    }

    private void report(FindingCode code, Dated<Setting> rule, String verb, Working working) {
        working.report(
                working.at(
                                working.dayField(),
                                code,
                                "%ss %s %s.".formatted(word, verb, Days.show(rule.row().day())),
                                "Correct the day, or leave the %ss out.".formatted(word))
                        .by(rule.ref()));
    }
}
