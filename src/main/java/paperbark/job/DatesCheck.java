package paperbark.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.value.Days;

/** Checks the days of a job against its stage, each other and today. */
final class DatesCheck {
    private final Job job;
    private final LocalDate today;
    private final List<Finding> findings = new ArrayList<>();

    private DatesCheck(Job job, LocalDate today) {
        this.job = job;
        this.today = today;
    }

    static List<Finding> of(Job job, LocalDate today) {
        DatesCheck check = new DatesCheck(job, today);
        check.stageAndDates();
        return check.findings;
    }

    private void stageAndDates() {
        if (job.installedOn().isEmpty()) {
            withoutInstallation();
            laterDays();
            return;
        }
        LocalDate day = job.installedOn().get();
        installation(day);
        signature(day);
        if (!day.isAfter(today)) {
            laterDays();
        }
    }

    private void withoutInstallation() {
        if (job.stage() == Stage.INSTALLED && !job.unread().contains(Field.INSTALLED_DATE)) {
            Finding missing =
                    found(
                            FindingCode.FACT_MISSING,
                            Field.INSTALLED_DATE,
                            "The job is installed, but the register does not say on which day.",
                            "Type the day on which the heater could first deliver hot water.");
            findings.add(missing.as(Severity.STOP).holding(Concern.CLAIMS));
        }
    }

    private void installation(LocalDate day) {
        if (day.isAfter(today)) {
            add(
                    FindingCode.DATE_IN_FUTURE,
                    Field.INSTALLED_DATE,
                    "The day of installation, " + Days.show(day) + ", is still to come.",
                    "Correct the date, or mark the job as booked and clear the date.");
        } else if (job.stage() == Stage.BOOKED) {
            add(
                    FindingCode.INSTALLED_BUT_BOOKED,
                    Field.STAGE,
                    "The job is booked but was installed on " + Days.show(day) + ".",
                    "Mark the job as installed, or clear the day of installation.");
        }
    }

    private void signature(LocalDate day) {
        if (job.signedOn().isPresent() && job.signedOn().get().isBefore(day)) {
            add(
                    FindingCode.SIGNED_BEFORE_INSTALLED,
                    Field.SIGNED_DATE,
                    "The owner signed on "
                            + Days.show(job.signedOn().get())
                            + ", before the installation on "
                            + Days.show(day)
                            + ".",
                    "Clear the date, prepare again and have the new assignment signed; correct the date only if it was mistyped.");
        }
    }

    private void laterDays() {
        stillToCome("the owner's signature", job.signedOn(), Field.SIGNED_DATE);
        stillToCome(
                "the plumbing certificate",
                job.compliance().plumbingOn(),
                Field.PLUMBING_CERTIFICATE_DATE);
        stillToCome(
                "the electrical certificate",
                job.compliance().electricalOn(),
                Field.ELECTRICAL_CERTIFICATE_DATE);
        stillToCome(
                "the old heater's removal",
                job.oldHeater().flatMap(OldHeater::removedOn),
                Field.OLD_REMOVED_DATE);
    }

    private void stillToCome(String what, Optional<LocalDate> day, Field field) {
        day.filter(d -> d.isAfter(today))
                .ifPresent(
                        d ->
                                add(
                                        FindingCode.DATES_OUT_OF_ORDER,
                                        field,
                                        "The day of "
                                                + what
                                                + ", "
                                                + Days.show(d)
                                                + ", is still to come.",
                                        "Correct the date, or clear it until that day."));
    }

    private void add(FindingCode code, Field field, String fact, String remedy) {
        findings.add(found(code, field, fact, remedy));
    }

    private Finding found(FindingCode code, Field field, String fact, String remedy) {
        return Finding.of(code, job.origin().cell(field), fact, remedy);
    }
}
