package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.rules.ClimateZoneRow;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.ZoneRow;
import paperbark.value.Postcode;

/**
 * The Victorian climate zone of a job.
 *
 * @param working where steps and findings go
 * @param rules the rules
 */
record VeecZone(Working working, Rulebook rules) {

    /** The zone, 4 or 5; empty where a fact is missing or the tables name none. */
    Optional<Integer> find(LocalDate day) {
        Job job = working.job();
        Optional<Postcode> postcode = job.site().address().postcode();
        Optional<Product> product = job.heater().product();
        if (postcode.isEmpty() || product.isEmpty()) {
            return Optional.empty();
        }
        Optional<Dated<ZoneRow>> row = row(day, postcode.get());
        if (row.isEmpty()) {
            return Optional.empty();
        }
        // rule: how-we-read Victorian zones: the STC zone of the technology stands for the climate
        // zone, because the postcode list of the Specifications was not read.
        Optional<Integer> stcZone = row.get().row().zone(product.get().isSolar());
        if (stcZone.isEmpty()) {
            noZone(postcode.get());
            return Optional.empty();
        }
        return climateZone(day, stcZone.get(), row.get());
    }

    private Optional<Integer> climateZone(LocalDate day, int stcZone, Dated<ZoneRow> row) {
        Postcode postcode = working.job().site().address().postcode().orElseThrow();
        Optional<Dated<ClimateZoneRow>> zone = rules.climateZones().on(day, stcZone);
        if (zone.isEmpty()) {
            working.report(
                    working.at(
                                    Field.SITE_POSTCODE,
                                    FindingCode.VEEC_TABLE_MISSING,
                                    "The climate zone is not known: %s."
                                            .formatted(rules.climateZones().missing(day, stcZone)),
                                    "Look the zone up in the Specifications and add it to rules/veec/climate-zones.csv in the firm's tables.")
                            .seeing(postcode.digits()));
            return Optional.empty();
        }
        working.step(
                "Climate zone",
                "postcode %s, %s, STC zone %d"
                        .formatted(postcode, working.from(Field.SITE_POSTCODE), stcZone),
                "zone " + zone.get().row().zone(),
                row.ref(),
                zone.get().ref());
        return zone.map(z -> z.row().zone());
    }

    private Optional<Dated<ZoneRow>> row(LocalDate day, Postcode postcode) {
        if (rules.zones().knows(postcode)) {
            return working.rule(rules.zones(), day, postcode);
        }
        noZone(postcode);
        return Optional.empty();
    }

    private void noZone(Postcode postcode) {
        working.report(
                working.at(
                                Field.SITE_POSTCODE,
                                FindingCode.ZONE_MISSING,
                                "Postcode %s has no climate zone for VEECs.".formatted(postcode),
                                "Compare the postcode with the site's address; if it is right, leave the VEECs out.")
                        .seeing(postcode.digits()));
    }
}
