package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.Field;
import paperbark.job.OldHeater;
import paperbark.job.OldKind;
import paperbark.job.Stage;
import paperbark.rules.ActivityRow;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.value.Boost;
import paperbark.value.Days;

/**
 * The activity of a job: what was taken out and what was put in.
 *
 * @param working where steps and findings go
 * @param rules the rules
 */
record VeecActivity(Working working, Rulebook rules) {

    /** The code of the activity; empty where a fact is missing or no activity fits. */
    Optional<String> find(LocalDate day) {
        Optional<OldHeater> old = working.job().oldHeater();
        Optional<Product> product = working.job().heater().product();
        if (old.isEmpty() || product.isEmpty() || !working.couldRead(Field.OLD_KIND)) {
            return Optional.empty();
        }
        OldKind oldKind = old.get().kind();
        Optional<String> newKind = newKind(product.get());
        if (newKind.isEmpty()) {
            unclear("The products table names no boost for this solar heater.", Field.MODEL);
            return Optional.empty();
        }
        if (oldKind == OldKind.UNTOLD) {
            if (working.job().stage() == Stage.INSTALLED) {
                unclear("The register does not say what the old heater was.", Field.OLD_KIND);
            }
            return Optional.empty();
        }
        if (oldKind == OldKind.NONE) {
            // rule: deeca-hot-water discounts: every domestic activity replaces a heater.
            unclear("No heater was replaced, and every activity needs one.", Field.OLD_KIND);
            return Optional.empty();
        }
        return code(day, oldKind, newKind.get(), product.get());
    }

    private Optional<String> code(LocalDate day, OldKind oldKind, String newKind, Product product) {
        ActivityRow.Key key = new ActivityRow.Key(word(oldKind), newKind);
        Optional<Dated<ActivityRow>> row = rules.activities().on(day, key);
        if (row.isEmpty()) {
            closedOrUnclear(
                    day, key, "old: %s; new: %s".formatted(oldKind.word(), newHeater(product)));
            return Optional.empty();
        }
        working.step(
                "Activity",
                "%s replaced (%s) by %s"
                        .formatted(
                                oldKind.word(), working.from(Field.OLD_KIND), newHeater(product)),
                row.get().row().code(),
                row.get().ref());
        return row.map(r -> r.row().code());
    }

    private void closedOrUnclear(LocalDate day, ActivityRow.Key key, String heaters) {
        Optional<Dated<ActivityRow>> ended = rules.activities().endedBefore(day, key);
        if (ended.isPresent()) {
            Dated<ActivityRow> row = ended.get();
            working.report(
                    working.at(
                                    Field.OLD_KIND,
                                    FindingCode.VEEC_ACTIVITY_CLOSED,
                                    "Activity %s (%s) ended on %s."
                                            .formatted(
                                                    row.row().code(),
                                                    heaters,
                                                    Days.show(row.inForce().to().orElseThrow())),
                                    "Leave the VEECs out, or correct the kind of old or new heater.")
                            .by(row.ref()));
        } else {
            unclear(
                    "No activity is known for these heaters (%s): %s."
                            .formatted(heaters, rules.activities().missing(day, key)),
                    Field.OLD_KIND);
        }
    }

    private void unclear(String fact, Field field) {
        working.report(
                working.at(
                        field,
                        FindingCode.VEEC_ACTIVITY_UNCLEAR,
                        fact,
                        "Correct the kind of old or new heater, or leave the VEECs out."));
    }

    /** An old heater's kind as the activities table writes it. */
    static String word(OldKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String newHeater(Product product) {
        String boost = product.isSolar() ? ", " + product.boost().word() + " boost" : "";
        return product.kind().word() + boost;
    }

    private static Optional<String> newKind(Product product) {
        if (!product.isSolar()) {
            return Optional.of("heat-pump");
        }
        return product.boost() == Boost.NONE
                ? Optional.empty()
                : Optional.of(product.boost() == Boost.GAS ? "solar-gas" : "solar-electric");
    }
}
