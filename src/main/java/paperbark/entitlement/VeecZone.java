package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.Field;
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
        Optional<Dated<ZoneRow>> row = SiteZone.row(day, working, rules, this::missing);
        if (row.isEmpty()) {
            return Optional.empty();
        }
        Postcode postcode = working.job().site().address().postcode().orElseThrow();
        Product product = working.job().heater().product().orElseThrow();
        // rule: how-we-read Victorian zones: the STC zone of the technology stands for the climate
        // zone, because the postcode list of the Specifications was not read.
        Optional<Integer> stcZone = row.get().row().zone(product.isSolar());
        if (stcZone.isEmpty()) {
            working.report(missing(postcode));
            return Optional.empty();
        }
        return climateZone(day, postcode, stcZone.get(), row.get());
    }

    private Optional<Integer> climateZone(
            LocalDate day, Postcode postcode, int stcZone, Dated<ZoneRow> row) {
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

    private Finding missing(Postcode postcode) {
        return working.at(
                        Field.SITE_POSTCODE,
                        FindingCode.ZONE_MISSING,
                        "Postcode %s has no climate zone for VEECs.".formatted(postcode),
                        "Compare the postcode with the site's address; if it is right, leave the VEECs out.")
                .seeing(postcode.digits());
    }
}
