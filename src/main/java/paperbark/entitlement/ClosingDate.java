package paperbark.entitlement;

import java.time.LocalDate;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.value.Days;
import paperbark.value.SchemeName;

/**
 * The last safe day for creating certificates.
 *
 * @param scheme whose certificates
 * @param lastDay the day; it still counts
 * @param urgentFrom first day on which somebody must hurry
 * @param how how the last day follows from the day of the work, for the working
 * @param rule the row that says so
 */
public record ClosingDate(
        SchemeName scheme, LocalDate lastDay, LocalDate urgentFrom, String how, RuleRef rule) {

    /** Adds the step, reports a closing date that is past or near, and gives the last day back. */
    LocalDate tell(LocalDate today, Working working) {
        working.step(
                "Last safe day for creating %ss".formatted(scheme.word()),
                how,
                Days.show(lastDay),
                rule);
        if (today.isAfter(lastDay)) {
            working.report(
                    working.at(
                            working.dayField(),
                            FindingCode.CLAIM_CLOSED,
                            "The last day for creating %ss was %s."
                                    .formatted(scheme.word(), Days.show(lastDay)),
                            "Leave the %ss out, or correct the day of installation."
                                    .formatted(scheme.word())));
        } else if (!today.isBefore(urgentFrom)) {
            working.report(
                    working.at(
                            working.dayField(),
                            FindingCode.CLAIM_CLOSING,
                            "%ss must be created by %s, %s."
                                    .formatted(
                                            scheme.word(),
                                            Days.show(lastDay),
                                            left(lastDay.toEpochDay() - today.toEpochDay())),
                            "Send the signed assignment to the buyer now."));
        }
        return lastDay;
    }

    private static String left(long days) {
        return days == 0 ? "which is today" : days == 1 ? "in 1 day" : "in " + days + " days";
    }
}
