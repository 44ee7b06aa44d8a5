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
            report(FindingCode.BEFORE_SCHEME, first.get(), day, working);
            return false;
        }
        if (last.isPresent() && day.isAfter(last.get().row().day())) {
            report(FindingCode.AFTER_SCHEME, last.get(), day, working);
            return false;
        }
        return first.isPresent() && last.isPresent();
    }

    private void report(FindingCode code, Dated<Setting> rule, LocalDate day, Working working) {
        String which = code == FindingCode.BEFORE_SCHEME ? "first" : "last";
        working.report(
                working.at(
                                working.dayField(),
                                code,
                                "The %s day for %ss is %s; the day of this job is %s."
                                        .formatted(
                                                which,
                                                word,
                                                Days.show(rule.row().day()),
                                                Days.show(day)),
                                "Correct the day, or leave the %ss out.".formatted(word))
                        .by(rule.ref()));
    }
}
