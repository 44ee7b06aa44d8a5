package paperbark.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
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
                    "Correct the date, or mark the job as booked and clear the date.");
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
                    "Correct the date, or have the owner sign a new assignment and enter its date.");
        }
        if (!day.isAfter(today)) {
            laterDays();
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

    private void owner() {
        Owner owner = job.owner();
        boolean claims = job.claims();
        if (claims && owner.gstRegistered().orElse(false)) {
            registeredOwner(job.site().business());
        } else if (claims
                && owner.abn().isPresent()
                && owner.gstRegistered().isEmpty()
                && !job.unread().contains(Field.OWNER_GST)) {
            add(
                    FindingCode.GST_STATUS_MISSING,
                    Field.OWNER_GST,
                    "The owner has an ABN but the register does not say whether they are registered for GST.",
                    "Ask the owner and type yes or no under \"" + Field.OWNER_GST.label() + "\".");
        }
        bankDetails(claims);
    }

    // Source: ATO, GST and the Small-scale Renewable Energy Scheme (QC 24820): an owner owes GST on
    // the assignment who is registered and uses the heater in business.
    private void registeredOwner(Optional<Boolean> business) {
        if (business.orElse(true)) {
            add(
                    FindingCode.GST_OWNER_REGISTERED,
                    Field.OWNER_GST,
                    "The owner is registered for GST, and "
                            + (business.isPresent()
                                    ? "the site is business premises."
                                    : "the register does not say whether the site is business premises."),
                    "Ask the owner, if the heater is used in business, for their own tax invoice for the assignment.");
        }
    }

    private void bankDetails(boolean claims) {
        boolean toOwner = job.payment().form().map(f -> f == BenefitForm.PAYMENT).orElse(false);
        Map<Field, Boolean> known = new EnumMap<>(Field.class);
        known.put(Field.ACCOUNT_NAME, job.payment().accountName().isPresent());
        known.put(Field.BSB, job.payment().bsb().isPresent());
        known.put(Field.ACCOUNT, job.payment().account().isPresent());
        List<Field> missing =
                known.keySet().stream()
                        .filter(f -> !known.get(f) && !job.unread().contains(f))
                        .toList();
        if (claims && toOwner && !missing.isEmpty()) {
            add(
                    FindingCode.BANK_DETAILS_MISSING,
                    missing.get(0),
                    "The owner is to be paid, but nothing stands under "
                            + missing.stream()
                                    .map(f -> "\"" + f.label() + "\"")
                                    .collect(Collectors.joining(" or "))
                            + ".",
                    "Ask the owner for the account, or have it written on the form.");
        }
    }

    private void missing() {
        if (job.stage() == Stage.BOOKED) {
            return;
        }
        for (Missing missing : Missing.of(job)) {
            if (!isToldElsewhere(missing.field())) {
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

    /** Whether a stop speaks of the missing fact, so that a check would only repeat it. */
    private boolean isToldElsewhere(Field field) {
        return switch (field) {
            case INSTALLED_DATE, PLUMBING_CERTIFICATE -> true;
            case OLD_KIND, OLD_DISABLED, OLD_DISPOSAL -> job.veec().claimed();
            default -> false;
        };
    }

    private void claims() {
        if (job.stage() == Stage.BOOKED) {
            return;
        }
        benefit(SchemeName.STC, Field.STC_BENEFIT, Concern.STC);
        benefit(SchemeName.VEEC, Field.VEEC_BENEFIT, Concern.VEEC);
        boolean claims = job.claims();
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
