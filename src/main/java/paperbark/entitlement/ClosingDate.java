package paperbark.entitlement;

import java.time.LocalDate;
import paperbark.finding.FindingCode;
import paperbark.value.Days;

/**
 * The last safe day for creating certificates.
 *
 * @param word the scheme's certificates, singular
 * @param lastDay the day; it still counts
 * @param urgentFrom first day on which somebody must hurry
 */
record ClosingDate(String word, LocalDate lastDay, LocalDate urgentFrom) {

    /** Reports a closing date that is past or near. */
    void compare(LocalDate today, Working working) {
        if (today.isAfter(lastDay)) {
            working.report(
                    working.at(
                            working.dayField(),
                            FindingCode.CLAIM_CLOSED,
                            "The last day for creating %ss was %s."
                                    .formatted(word, Days.show(lastDay)),
                            "Leave the %ss out, or correct the day of installation."
                                    .formatted(word)));
        } else if (!today.isBefore(urgentFrom)) {
            working.report(
                    working.at(
                            working.dayField(),
                            FindingCode.CLAIM_CLOSING,
                            "%ss must be created by %s, %s."
                                    .formatted(
                                            word,
                                            Days.show(lastDay),
                                            left(lastDay.toEpochDay() - today.toEpochDay())),
                            "Send the signed assignment to the buyer now."));
        }
    }

    private static String left(long days) {
        return days == 0 ? "which is today" : days == 1 ? "in 1 day" : "in " + days + " days";
    }
}
