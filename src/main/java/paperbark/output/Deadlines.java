package paperbark.output;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import paperbark.entitlement.Entitlements;
import paperbark.firm.StatePaper;
import paperbark.job.Job;
import paperbark.value.Trade;

/** The days after which something is too late for a job. */
public final class Deadlines {
    private Deadlines() {}

    /**
     * Closing dates of the claims and last days of compliance certificates not yet on file,
     * earliest first.
     *
     * @param holiday whether a day is a public holiday at the site
     */
    public static List<Deadline> of(
            Job job,
            Entitlements entitlements,
            List<StatePaper> statePapers,
            Predicate<LocalDate> holiday,
            LocalDate today) {
        List<Deadline> deadlines = new ArrayList<>();
        entitlements
                .all()
                .forEach(
                        e ->
                                e.lastDay()
                                        .ifPresent(
                                                day ->
                                                        deadlines.add(
                                                                deadline(
                                                                        "Create "
                                                                                + e.scheme().word()
                                                                                + "s",
                                                                        day,
                                                                        today))));
        for (StatePaper paper : statePapers) {
            boolean onFile =
                    paper.trade() == Trade.PLUMBING
                            ? job.compliance().plumbingNumber().isPresent()
                            : job.compliance().electricalNumber().isPresent();
            if (!onFile && paper.hasTime()) {
                job.installedOn()
                        .ifPresent(
                                day ->
                                        deadlines.add(
                                                deadline(
                                                        paper.document(),
                                                        paper.dueAfter(day, holiday),
                                                        today)));
            }
        }
        deadlines.sort(Comparator.comparing(Deadline::lastDay).thenComparing(Deadline::what));
        return deadlines;
    }

    private static Deadline deadline(String what, LocalDate lastDay, LocalDate today) {
        return new Deadline(what, lastDay, ChronoUnit.DAYS.between(today, lastDay));
    }
}
