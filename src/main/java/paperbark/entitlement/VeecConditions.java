package paperbark.entitlement;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.OldHeater;
import paperbark.job.Stage;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.rules.VeecCondition;
import paperbark.value.Days;
import paperbark.value.Money;

/**
 * The conditions without which no VEEC can be created. What a booked job does not say yet is not
 * asked for.
 *
 * @param working where findings go
 * @param rules the rules
 */
record VeecConditions(Working working, Rulebook rules) {

    /** Reports every condition that is not met. */
    void check(LocalDate day, LocalDate today) {
        working.job().heater().product().ifPresent(p -> size(p, day, today));
        working.job().heater().product().ifPresent(p -> warranty(p, day));
        if (working.job().stage() == Stage.INSTALLED) {
            decommissioned();
            coPayment(day);
        }
    }

    private void size(Product product, LocalDate day, LocalDate today) {
        // rule: deeca-2025-07-08 Part 44: heat pumps above 700 L belong to Part 44.
        Optional<Dated<Setting>> limit =
                rules.veecConditions().on(day, VeecCondition.LARGEST_LITRES);
        // Before the first row no limit is known: whatever is small enough today was so then.
        limit.or(() -> rules.veecConditions().on(today, VeecCondition.LARGEST_LITRES))
                .filter(known -> product.litres() > known.row().whole())
                .ifPresent(
                        known -> {
                            if (product.isSolar() || limit.isEmpty()) {
                                sizeUnclear(product, day, known);
                            } else {
                                tooLarge(product, known);
                            }
                        });
    }

    private void tooLarge(Product product, Dated<Setting> limit) {
        working.report(
                working.at(
                                Field.MODEL,
                                FindingCode.VEEC_TOO_LARGE,
                                "The heat pump holds %d L, more than %d L, and belongs to another activity, Part 44."
                                        .formatted(product.litres(), limit.row().whole()),
                                "Leave the VEECs out, or claim under Part 44.")
                        .by(limit.ref()));
    }

    private void sizeUnclear(Product product, LocalDate day, Dated<Setting> limit) {
        // rule: how-we-read VEEC conditions: the limit is one of heat pumps since 11 Jul 2025; none
        // was read for solar heaters, nor for the time before.
        String what = product.isSolar() ? "solar heaters" : "heat pumps on " + Days.show(day);
        working.report(
                working.at(
                        Field.MODEL,
                        FindingCode.VEEC_SIZE_UNCLEAR,
                        "The heater holds %d L; whether an activity for homes takes %s of more than %d L is not in the rules."
                                .formatted(product.litres(), what, limit.row().whole()),
                        "Ask the buyer, or look the limit up in the Specifications, before the VEECs are assigned."));
    }

    private void warranty(Product product, LocalDate day) {
        // rule: esc-2025-02-18 product warranty: at least 5 years since 31 Mar 2025.
        Optional<Integer> shortest = product.shortestWarrantyYears();
        condition(VeecCondition.WARRANTY_LEAST_YEARS, day)
                .filter(least -> shortest.filter(s -> s < least.row().whole()).isPresent())
                .ifPresent(
                        least ->
                                working.report(
                                        working.at(
                                                        Field.MODEL,
                                                        FindingCode.VEEC_WARRANTY_SHORT,
                                                        "The shortest warranty in the products table is %d years; at least %d are needed."
                                                                .formatted(
                                                                        shortest.orElseThrow(),
                                                                        least.row().whole()),
                                                        "Correct the products table, or leave the VEECs out.")
                                                .by(least.ref())));
    }

    private void decommissioned() {
        // rule: veet-regs-2018 reg 17: no certificate unless the old heater is decommissioned.
        Job job = working.job();
        if (!working.couldRead(Field.OLD_KIND, Field.OLD_DISABLED, Field.OLD_DISPOSAL)) {
            return;
        }
        Optional<OldHeater> old = job.oldHeater();
        boolean how = old.flatMap(OldHeater::disabledHow).isPresent();
        boolean where = old.flatMap(OldHeater::disposal).isPresent();
        if (old.isEmpty()) {
            decommissioned(Field.OLD_KIND, "The register names no old heater.");
        } else if (!job.replacesHeater()) {
            // That nothing was taken out leaves the activity unclear, which is said already.
            return;
        } else if (!how && !where) {
            decommissioned(
                    Field.OLD_DISABLED,
                    "The register does not say how the old heater was put out of use, nor where it went.");
        } else if (!how) {
            decommissioned(
                    Field.OLD_DISABLED,
                    "The register does not say how the old heater was put out of use.");
        } else if (!where) {
            decommissioned(
                    Field.OLD_DISPOSAL, "The register does not say where the old heater went.");
        }
    }

    private void decommissioned(Field field, String fact) {
        working.report(
                working.at(
                        field,
                        FindingCode.VEEC_NOT_DECOMMISSIONED,
                        fact,
                        "Ask the crew, enter what was done with the old heater, and keep the photos."));
    }

    private void coPayment(LocalDate day) {
        if (!working.couldRead(Field.CO_PAYMENT)) {
            return;
        }
        // rule: veet-regs-2018 reg 15A: no certificate without the minimum co-payment.
        // rule: esc-2025-09-02 co-payment: its amount stands in the Specifications, for each
        // product.
        Optional<Money> paid = working.job().payment().coPayment();
        rules.veecConditions()
                .on(day, VeecCondition.CO_PAYMENT_LEAST_DOLLARS)
                .ifPresentOrElse(
                        least -> coPayment(paid, least), () -> coPaymentUnknown(paid, day));
    }

    private void coPayment(Optional<Money> paid, Dated<Setting> least) {
        if (isShort(paid, least.row().decimal())) {
            String needed = "at least $%s is needed.".formatted(least.row().value());
            working.report(coPaymentMissing(paid, needed).by(least.ref()));
        }
    }

    private void coPaymentUnknown(Optional<Money> paid, LocalDate day) {
        String missing =
                rules.veecConditions().missing(day, VeecCondition.CO_PAYMENT_LEAST_DOLLARS);
        if (paid.filter(p -> p.compareTo(Money.ZERO) > 0).isEmpty()) {
            working.report(
                    coPaymentMissing(paid, "how much is needed is not known: " + missing + "."));
            return;
        }
        working.report(
                working.at(
                                Field.CO_PAYMENT,
                                FindingCode.VEEC_TABLE_MISSING,
                                "Whether the co-payment of %s suffices is not known: %s."
                                        .formatted(paid.get(), missing),
                                "Look the amount up in the Specifications and add it to rules/veec/conditions.csv in the firm's tables.")
                        .seeing(paid.get().toString()));
    }

    private Finding coPaymentMissing(Optional<Money> paid, String needed) {
        return working.at(
                        Field.CO_PAYMENT,
                        FindingCode.VEEC_CO_PAYMENT_MISSING,
                        paid.map(p -> "The co-payment is " + p).orElse("No co-payment is noted")
                                + "; "
                                + needed,
                        "Enter what the owner paid for the heater out of their own pocket, or leave the VEECs out.")
                .seeing(paid.map(Money::toString).orElse(""));
    }

    private static boolean isShort(Optional<Money> paid, BigDecimal least) {
        return paid.map(Money::amount).orElse(BigDecimal.ZERO).compareTo(least) < 0;
    }

    private Optional<Dated<Setting>> condition(VeecCondition which, LocalDate day) {
        return working.rule(rules.veecConditions(), day, which);
    }
}
