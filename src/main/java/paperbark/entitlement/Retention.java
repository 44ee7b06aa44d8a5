package paperbark.entitlement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import paperbark.finding.RuleRef;
import paperbark.rules.Dated;
import paperbark.rules.RecordRule;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.value.SchemeName;

/**
 * For how long what is known of a job must be kept: the longest of the periods for tax, accounts,
 * certificates and the job's file, and until the last warranty ends. Source: {@code au/records.csv}
 * and {@code keep_years} in the tables of the schemes.
 */
public final class Retention {
    private Retention() {}

    /**
     * What the periods are counted from.
     *
     * @param completed day on which the job was done
     * @param lastDays last days on which its certificates could be created
     * @param warrantyUntil last day of its longest warranty, where known
     */
    public record Job(
            LocalDate completed,
            Map<SchemeName, LocalDate> lastDays,
            Optional<LocalDate> warrantyUntil) {}

    /**
     * A period.
     *
     * @param what is kept, in words
     * @param until the last day on which it must be there
     * @param rule the row that says so; empty for a warranty
     */
    public record Period(String what, LocalDate until, Optional<RuleRef> rule) {}

    /** The periods of a job, the one that ends last first. */
    public static List<Period> of(Job job, Rulebook rulebook) {
        List<Period> periods = new ArrayList<>();
        for (RecordRule record : RecordRule.values()) {
            rulebook.records()
                    .on(job.completed(), record)
                    .ifPresent(years -> periods.add(period(words(record), job.completed(), years)));
        }
        job.lastDays()
                .forEach(
                        (scheme, day) ->
                                Schemes.KNOWN
                                        .of(scheme)
                                        .keepYears(day, rulebook)
                                        .ifPresent(
                                                years ->
                                                        periods.add(
                                                                period(
                                                                        "papers of its %ss"
                                                                                .formatted(
                                                                                        scheme
                                                                                                .word()),
                                                                        day,
                                                                        years))));
        job.warrantyUntil()
                .ifPresent(
                        day -> periods.add(new Period("longest warranty", day, Optional.empty())));
        periods.sort(Comparator.comparing(Period::until).reversed());
        return List.copyOf(periods);
    }

    private static Period period(String what, LocalDate from, Dated<Setting> years) {
        return new Period(what, from.plusYears(years.row().whole()), Optional.of(years.ref()));
    }

    private static String words(RecordRule record) {
        return switch (record) {
            case TAX_KEEP_YEARS -> "tax and GST records";
            case COMPANY_KEEP_YEARS -> "a company's accounts";
            case CERTIFICATE_KEEP_YEARS -> "copies of compliance certificates";
            case JOB_FILE_KEEP_YEARS -> "the file of the job";
        };
    }
}
