package paperbark.entitlement;

import java.time.LocalDate;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.Field;
import paperbark.job.Stage;
import paperbark.rules.Rulebook;
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
                            } else if (declarationMissing(today)) {
                                // rule: ree-regs-2001 reg 19A(1): above 700 L the number is 0
                                // without the declarations of reg 19A(2).
                                working.report(
                                        working.at(
                                                        Field.DECLARATIONS_DATE,
                                                        FindingCode.SOLAR_DECLARATION_MISSING,
                                                        size(product, limit.row().whole())
                                                                + declarations()
                                                                + ".",
                                                        "Get the declarations of the owner and of a"
                                                                + " qualified person, and enter their day.")
                                                .by(limit.ref()));
                            }
                        });
    }

    private static String size(Product product, int limit) {
        return "The heater holds %d L, more than %d L".formatted(product.litres(), limit);
    }

    private String declarations() {
        return working.job()
                .heater()
                .declarationsOn()
                .map(on -> ", and its declarations are dated " + Days.show(on))
                .orElse(", and no declarations are noted");
    }

    /** Declarations that are still to come count as missing; a booked job has time. */
    private boolean declarationMissing(LocalDate today) {
        return working.job().stage() == Stage.INSTALLED
                && working.couldRead(Field.DECLARATIONS_DATE)
                && working.job()
                        .heater()
                        .declarationsOn()
                        .map(on -> on.isAfter(today))
                        .orElse(true);
    }
}
