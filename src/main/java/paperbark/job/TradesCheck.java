package paperbark.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.FirmTables;
import paperbark.firm.Licence;
import paperbark.firm.Person;
import paperbark.firm.StatePaper;
import paperbark.rules.HolidayRow;
import paperbark.rules.Rulebook;
import paperbark.value.Days;
import paperbark.value.State;
import paperbark.value.Trade;

/** Checks licences and compliance certificates of a job. */
final class TradesCheck {
    private final Job job;
    private final FirmTables tables;
    private final Rulebook rulebook;
    private final List<Finding> findings = new ArrayList<>();

    private TradesCheck(Job job, FirmTables tables, Rulebook rulebook) {
        this.job = job;
        this.tables = tables;
        this.rulebook = rulebook;
    }

    static List<Finding> of(Job job, FirmTables tables, Rulebook rulebook) {
        TradesCheck check = new TradesCheck(job, tables, rulebook);
        check.licence(
                Trade.PLUMBING,
                job.trades().plumber(),
                job.trades().plumberLicence(),
                Field.PLUMBER);
        check.licence(
                Trade.ELECTRICAL,
                job.trades().electrician(),
                job.trades().electricianLicence(),
                Field.ELECTRICIAN);
        if (job.isInstalled()) {
            check.plumbingNumber();
            check.certificateDay(
                    Trade.PLUMBING, job.compliance().plumbingOn(), Field.PLUMBING_CERTIFICATE_DATE);
            check.certificateDay(
                    Trade.ELECTRICAL,
                    job.compliance().electricalOn(),
                    Field.ELECTRICAL_CERTIFICATE_DATE);
        }
        return check.findings;
    }

    private void licence(
            Trade trade, Optional<Person> person, Optional<Licence> licence, Field field) {
        Optional<State> state = job.site().address().state();
        Optional<LocalDate> day = job.ruleDay();
        if (person.isEmpty() || licence.isPresent() || state.isEmpty() || day.isEmpty()) {
            return;
        }
        List<Licence> lapsed = person.get().licences(trade, state.get());
        String name = person.get().name();
        String whose = trade.word() + " licence of " + name + " for " + state.get();
        Finding finding =
                lapsed.isEmpty()
                        ? Finding.of(
                                FindingCode.LICENCE_MISSING,
                                job.origin().cell(field),
                                "The people table has no " + whose + ".",
                                "Add the licence to the people table, or name the person who did the work.")
                        : Finding.of(
                                FindingCode.LICENCE_EXPIRED,
                                job.origin().cell(field),
                                "The "
                                        + whose
                                        + " is in force "
                                        + periods(lapsed)
                                        + ", not on "
                                        + Days.show(day.get())
                                        + ".",
                                "Enter the renewed licence in the people table, or name the person who did the work.");
        // Before the visit there is still time to send somebody else.
        findings.add((job.isBooked() ? finding.as(Severity.CHECK) : finding).seeing(name));
    }

    private static String periods(List<Licence> licences) {
        return licences.stream()
                .map(l -> l.inForce().toString())
                .collect(Collectors.joining(" and "));
    }

    private void plumbingNumber() {
        boolean claims = job.hasClaims();
        boolean known =
                job.compliance().plumbingNumber().isPresent()
                        || job.unread().contains(Field.PLUMBING_CERTIFICATE);
        if (claims && !known) {
            findings.add(
                    Finding.of(
                            FindingCode.CERTIFICATE_NUMBER_MISSING,
                            job.origin().cell(Field.PLUMBING_CERTIFICATE),
                            "The number of the plumbing compliance certificate is missing.",
                            "Type the number from the certificate that the licensed plumber lodged."));
        }
    }

    private void certificateDay(Trade trade, Optional<LocalDate> issued, Field field) {
        Optional<LocalDate> done = job.installedOn();
        if (issued.isEmpty() || done.isEmpty()) {
            return;
        }
        if (issued.get().isBefore(done.get())) {
            findings.add(
                    Finding.of(
                            FindingCode.DATES_OUT_OF_ORDER,
                            job.origin().cell(field),
                            "The "
                                    + trade.word()
                                    + " certificate is dated "
                                    + Days.show(issued.get())
                                    + ", before the installation on "
                                    + Days.show(done.get())
                                    + ".",
                            "Compare both dates with the papers and correct the one that is wrong."));
            return;
        }
        job.site()
                .address()
                .state()
                .flatMap(state -> tables.statePaper(state, trade))
                .filter(StatePaper::hasTime)
                .filter(p -> issued.get().isAfter(due(p, done.get())))
                .ifPresent(p -> late(trade, issued.get(), field, p, due(p, done.get())));
    }

    private LocalDate due(StatePaper paper, LocalDate done) {
        return paper.dueAfter(
                done, day -> HolidayRow.isHoliday(rulebook.holidays(), paper.state(), day));
    }

    private void late(Trade trade, LocalDate issued, Field field, StatePaper paper, LocalDate due) {
        findings.add(
                Finding.of(
                        FindingCode.CERTIFICATE_LATE,
                        job.origin().cell(field),
                        "The "
                                + trade.word()
                                + " certificate is dated "
                                + Days.show(issued)
                                + "; the "
                                + time(paper, due)
                                + " ended on "
                                + Days.show(due)
                                + ".",
                        "Compare both dates with the papers; if they are right, ask the licensed person whether it was lodged in time."));
    }

    /**
     * From when and how long the table counts. Some states count from the test or the invoice, and
     * holidays are known for some years only, so the words must let the admin judge.
     */
    private String time(StatePaper paper, LocalDate due) {
        String holidays =
                HolidayRow.covers(rulebook.holidays(), due)
                        ? ", public holidays not counted,"
                        : ", public holidays left aside,";
        return paper.time() + " after the installation" + (paper.workingDays() ? holidays : "");
    }
}
