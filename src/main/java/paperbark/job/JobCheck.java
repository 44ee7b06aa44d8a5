package paperbark.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import paperbark.finding.Concern;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.FirmTables;
import paperbark.rules.Rulebook;
import paperbark.value.Money;
import paperbark.value.SchemeName;

/**
 * Checks on one job alone: do its facts agree with each other, with the firm's tables and with the
 * calendar?
 */
public final class JobCheck {
    private final Job job;
    private final List<Finding> findings = new ArrayList<>();

    private JobCheck(Job job) {
        this.job = job;
    }

    /** Everything noticed about the job. */
    public static List<Finding> of(Job job, FirmTables tables, Rulebook rulebook, LocalDate today) {
        JobCheck check = new JobCheck(job);
        check.owner();
        check.missing();
        check.claims();
        check.correction();
        check.findings.addAll(DatesCheck.of(job, today));
        check.findings.addAll(PlaceCheck.of(job, rulebook, today));
        check.findings.addAll(HeaterCheck.of(job));
        check.findings.addAll(TradesCheck.of(job, tables, rulebook));
        return check.findings.stream().map(f -> f.forJob(job.reference())).toList();
    }

    private void owner() {
        Owner owner = job.owner();
        boolean claims = job.hasClaims();
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
                    "Ask the owner, if the heater is used in business, to give whoever takes the certificates their tax invoice.");
        }
    }

    private void bankDetails(boolean claims) {
        boolean toOwner = job.payment().form().map(f -> f == BenefitForm.PAYMENT).orElse(false);
        Map<Field, Boolean> known = new LinkedHashMap<>();
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
        if (job.isBooked()) {
            return;
        }
        for (Missing missing : Missing.of(job)) {
            if (!missing.isToldElsewhere(job)
                    && job.origin().columns().containsKey(missing.field())) {
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
        amounts();
        job.claims().forEach(this::nothingGiven);
        if (job.stage() != Stage.INSTALLED) {
            return;
        }
        job.claims().forEach(this::benefit);
        boolean claims = job.hasClaims();
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

    /**
     * Full price, co-payment and benefit are one sum: with a discount the owner pays the price less
     * what all schemes take off, otherwise the price. Where nobody said which, it must be one of
     * them.
     */
    private void amounts() {
        Payment payment = job.payment();
        if (payment.fullPrice().isEmpty() || payment.coPayment().isEmpty()) {
            return;
        }
        Money full = payment.fullPrice().get();
        Money paid = payment.coPayment().get();
        Money off = job.given();
        Money due = full.minus(off);
        if (paid.compareTo(full) > 0) {
            amounts(
                    "The owner is to pay "
                            + paid
                            + ", which is more than the full price of "
                            + full);
        } else if (payment.form().equals(Optional.of(BenefitForm.DISCOUNT))) {
            if (!paid.equals(due)) {
                amounts(
                        "The full price of "
                                + full
                                + " less discounts of "
                                + off
                                + " is "
                                + due
                                + ", but the register says that the owner pays "
                                + paid);
            }
        } else if (payment.form().equals(Optional.of(BenefitForm.PAYMENT)) && !paid.equals(full)) {
            amounts(
                    "The certificates are paid for separately, so that the owner pays the full price of "
                            + full
                            + ", but the register says "
                            + paid);
        } else if (payment.form().isEmpty() && !paid.equals(due) && !paid.equals(full)) {
            amounts(
                    "The register says that the owner pays "
                            + paid
                            + ", which is neither the full price of "
                            + full
                            + " nor "
                            + due
                            + " after benefits of "
                            + off);
        }
    }

    private void amounts(String fact) {
        add(
                FindingCode.AMOUNTS_DIFFER,
                Field.CO_PAYMENT,
                fact + ".",
                "Compare the three amounts with the invoice.");
    }

    private void benefit(SchemeName scheme, Claim claim) {
        Field field = Field.of(scheme, ClaimFact.BENEFIT);
        if (claim.claimed() && claim.benefit().isEmpty() && !job.unread().contains(field)) {
            findings.add(
                    found(
                                    FindingCode.BENEFIT_MISSING,
                                    field,
                                    "The register does not say what the owner gets for the "
                                            + scheme.word()
                                            + "s.",
                                    "Type the discount or payment in dollars.")
                            .holding(Set.of(Concern.claim(scheme))));
        }
    }

    private void nothingGiven(SchemeName scheme, Claim claim) {
        if (claim.claimed() && claim.benefit().filter(Money::isZero).isPresent()) {
            add(
                    FindingCode.BENEFIT_ZERO,
                    Field.of(scheme, ClaimFact.BENEFIT),
                    "The owner gets nothing for the " + scheme.word() + "s.",
                    "Type the discount or payment, or leave the amount if the owner agreed to that.");
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
                                        "Take the earlier papers out of circulation; where the ledger has that"
                                                + " job, the cover lists them."));
    }

    private void add(FindingCode code, Field field, String fact, String remedy) {
        findings.add(found(code, field, fact, remedy));
    }

    private Finding found(FindingCode code, Field field, String fact, String remedy) {
        return Finding.of(code, job.origin().cell(field), fact, remedy);
    }
}
