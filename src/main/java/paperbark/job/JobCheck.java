package paperbark.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.finding.Severity;
import paperbark.firm.FirmTables;
import paperbark.firm.SchemeName;
import paperbark.rules.Rulebook;
import paperbark.value.Days;

/**
 * Checks on one job alone: do its facts agree with each other, with the firm's tables and with the
 * calendar?
 */
public final class JobCheck {
    private final Job job;
    private final FirmTables tables;
    private final LocalDate today;
    private final List<Finding> findings = new ArrayList<>();

    private JobCheck(Job job, FirmTables tables, LocalDate today) {
        this.job = job;
        this.tables = tables;
        this.today = today;
    }

    /** Everything noticed about the job. */
    public static List<Finding> of(Job job, FirmTables tables, Rulebook rulebook, LocalDate today) {
        JobCheck check = new JobCheck(job, tables, today);
        check.stageAndDates();
        check.owner();
        check.missing();
        check.claims();
        check.correction();
        check.findings.addAll(PlaceCheck.of(job, rulebook, today));
        check.findings.addAll(HeaterCheck.of(job));
        check.findings.addAll(TradesCheck.of(job, tables));
        return check.findings.stream().map(f -> f.forJob(job.reference())).toList();
    }

    private void stageAndDates() {
        if (job.installedOn().isEmpty()) {
            if (job.stage() == Stage.INSTALLED && !job.unread().contains(Field.INSTALLED_DATE)) {
                Finding missing =
                        found(
                                FindingCode.FACT_MISSING,
                                Field.INSTALLED_DATE,
                                "The job is installed, but the register does not say on which day.",
                                "Type the day on which the heater could first deliver hot water.");
                findings.add(missing.as(Severity.STOP).holding(Concern.STC, Concern.VEEC));
            }
            return;
        }
        LocalDate day = job.installedOn().get();
        if (day.isAfter(today)) {
            add(
                    FindingCode.DATE_IN_FUTURE,
                    Field.INSTALLED_DATE,
                    "The day of installation, " + Days.show(day) + ", is still to come.",
                    "Correct the date, or mark the job as booked and leave it empty.");
        } else if (job.stage() == Stage.BOOKED) {
            add(
                    FindingCode.INSTALLED_BUT_BOOKED,
                    Field.STAGE,
                    "The job is booked but was installed on " + Days.show(day) + ".",
                    "Mark the job as installed, or clear the day of installation.");
        }
        if (job.signedOn().isPresent() && job.signedOn().get().isBefore(day)) {
            add(
                    FindingCode.SIGNED_BEFORE_INSTALLED,
                    Field.SIGNED_DATE,
                    "The owner signed on "
                            + Days.show(job.signedOn().get())
                            + ", before the installation on "
                            + Days.show(day)
                            + ".",
                    "Have the owner sign a new assignment and put its date here.");
        }
        Optional<LocalDate> removed = job.oldHeater().flatMap(OldHeater::removedOn);
        if (removed.isPresent() && removed.get().isAfter(today)) {
            add(
                    FindingCode.DATES_OUT_OF_ORDER,
                    Field.OLD_REMOVED_DATE,
                    "The old heater is said to be removed on "
                            + Days.show(removed.get())
                            + ", which is still to come.",
                    "Correct the date.");
        }
    }

    private void owner() {
        Owner owner = job.owner();
        boolean claims = job.stc().claimed() || job.veec().claimed();
        if (claims && owner.gstRegistered().orElse(false)) {
            add(
                    FindingCode.GST_OWNER_REGISTERED,
                    Field.OWNER_GST,
                    "The owner is registered for GST and assigns certificates.",
                    "Ask the owner for their own tax invoice for the assignment before the claim is lodged.");
        } else if (claims
                && owner.abn().isPresent()
                && owner.gstRegistered().isEmpty()
                && !job.unread().contains(Field.OWNER_GST)) {
            add(
                    FindingCode.GST_STATUS_MISSING,
                    Field.OWNER_GST,
                    "The owner has an ABN but the register does not say whether they are registered for GST.",
                    "Ask the owner and type yes or no.");
        }
        boolean toOwner = job.payment().form().map(f -> f == BenefitForm.PAYMENT).orElse(false);
        boolean account = job.payment().account().isPresent() && job.payment().bsb().isPresent();
        boolean refused = job.unread().contains(Field.BSB) || job.unread().contains(Field.ACCOUNT);
        if (claims && toOwner && !account && !refused) {
            add(
                    FindingCode.BANK_DETAILS_MISSING,
                    Field.ACCOUNT,
                    "The owner is to be paid, but BSB or account number is missing.",
                    "Ask the owner for the account, or have it written on the form.");
        }
    }

    private void missing() {
        if (job.stage() == Stage.BOOKED) {
            return;
        }
        for (Missing missing : Missing.of(job)) {
            boolean told =
                    missing.field() == Field.INSTALLED_DATE
                            || missing.field() == Field.PLUMBING_CERTIFICATE;
            if (!told) {
                add(
                        FindingCode.FACT_MISSING,
                        missing.field(),
                        "\""
                                + missing.field().label()
                                + "\" is empty although the job is installed.",
                        "Ask the "
                                + missing.who()
                                + " and type it in, or have it written on the paper.");
            }
        }
    }

    private void claims() {
        if (job.stage() == Stage.BOOKED) {
            return;
        }
        benefit(SchemeName.STC, Field.STC_BENEFIT, Concern.STC);
        benefit(SchemeName.VEEC, Field.VEEC_BENEFIT, Concern.VEEC);
        boolean claims = job.stc().claimed() || job.veec().claimed();
        if (claims
                && job.payment().fullPrice().isEmpty()
                && !job.unread().contains(Field.FULL_PRICE)) {
            add(
                    FindingCode.PRICE_MISSING,
                    Field.FULL_PRICE,
                    "The full price is missing, so GST cannot be worked out.",
                    "Type the price of heater and installation with GST, before any certificate discount.");
        }
    }

    private void benefit(SchemeName scheme, Field field, Concern concern) {
        Claim claim = job.claim(scheme);
        if (claim.claimed() && claim.benefit().isEmpty() && !job.unread().contains(field)) {
            findings.add(
                    found(
                                    FindingCode.BENEFIT_MISSING,
                                    field,
                                    "The register does not say what the owner gets for the "
                                            + scheme.word()
                                            + "s.",
                                    "Type the discount or payment in dollars.")
                            .holding(concern));
        }
    }

    private void correction() {
        job.corrects()
                .ifPresent(
                        what ->
                                add(
                                        FindingCode.CORRECTION,
                                        Field.CORRECTS,
                                        "This pack corrects an earlier one: " + what + ".",
                                        "Take the earlier papers out of circulation."));
    }

    private void add(FindingCode code, Field field, String fact, String remedy) {
        findings.add(found(code, field, fact, remedy));
    }

    private Finding found(FindingCode code, Field field, String fact, String remedy) {
        return Finding.of(code, job.origin().cell(field), fact, remedy);
    }
}
