package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.Field;
import paperbark.job.Stage;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.Setting;
import paperbark.rules.StcLimit;
import paperbark.value.Days;

/**
 * The limits on the size of a heater.
 *
 * @param working where findings go
 * @param rules the rules
 */
record StcSizes(Working working, Rulebook rules) {

    /** Reports a heater above the limit of its technology. */
    void check(Product product, LocalDate day, LocalDate today) {
        StcLimit which =
                product.isSolar()
                        ? StcLimit.SOLAR_LARGEST_LITRES
                        : StcLimit.HEAT_PUMP_LARGEST_LITRES;
        working.rule(rules.stcLimits(), day, which)
                .filter(limit -> product.litres() > limit.row().whole())
                .ifPresent(
                        limit -> {
                            if (!product.isSolar()) {
                                // rule: cer-systems heat pumps: not more than 425 L.
                                working.report(
                                        working.at(
                                                        Field.MODEL,
                                                        FindingCode.HEAT_PUMP_TOO_LARGE,
                                                        size(product, limit.row().whole()) + ".",
                                                        "Leave the STCs out, or correct the model.")
                                                .by(limit.ref()));
                            } else {
                                declarations(product, limit, today);
                            }
                        });
    }

    private void declarations(Product product, Dated<Setting> limit, LocalDate today) {
        // rule: ree-regs-2001 reg 19A(1): above 700 L the number is 0 without the declarations of
        // reg 19A(2).
        Optional<LocalDate> on = working.job().heater().declarationsOn();
        working.step(
                Entitlement.DECLARATIONS,
                size(product, limit.row().whole())
                        + ": the number stands with the declarations of owner and qualified person, "
                        + working.from(Field.DECLARATIONS_DATE),
                on.map(day -> "dated " + Days.show(day)).orElse("still to come"),
                limit.ref());
        if (isMissing(on, today)) {
            working.report(
                    working.at(
                                    Field.DECLARATIONS_DATE,
                                    FindingCode.SOLAR_DECLARATION_MISSING,
                                    size(product, limit.row().whole())
                                            + on.map(
                                                            day ->
                                                                    ", and its declarations are dated "
                                                                            + Days.show(day))
                                                    .orElse(", and no declarations are noted")
                                            + ".",
                                    "Get the declarations of the owner and of a qualified person,"
                                            + " and enter their day.")
                            .by(limit.ref()));
        }
    }

    private static String size(Product product, int limit) {
        return "The heater holds %d L, more than %d L".formatted(product.litres(), limit);
    }

    /** Declarations that are still to come count as missing; a booked job has time. */
    private boolean isMissing(Optional<LocalDate> on, LocalDate today) {
        return working.job().stage() == Stage.INSTALLED
                && working.couldRead(Field.DECLARATIONS_DATE)
                && on.map(day -> day.isAfter(today)).orElse(true);
    }
}
