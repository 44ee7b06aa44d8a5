package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.ZoneRow;
import paperbark.value.Postcode;
import paperbark.value.SchemeName;

/**
 * The STC zone of a job, by postcode and technology.
 *
 * @param working where steps and findings go
 * @param rules the rules
 */
record StcZone(Working working, Rulebook rules) {

    /** The zone; empty where a fact is missing or the table names none. */
    Optional<Integer> find(LocalDate day) {
        Optional<Dated<ZoneRow>> row = SiteZone.row(day, working, rules, p -> missing(p, ""));
        if (row.isEmpty()) {
            return Optional.empty();
        }
        Postcode postcode = working.job().site().address().postcode().orElseThrow();
        Product product = working.job().heater().product().orElseThrow();
        String technology = product.isSolar() ? "solar heaters" : "heat pumps";
        Optional<Integer> zone = row.get().row().zone(product.isSolar());
        if (zone.isEmpty()) {
            // rule: how-we-read zones: a blank of the table is "no zone", never a neighbour's.
            working.report(missing(postcode, " for " + technology).by(row.get().ref()));
            return Optional.empty();
        }
        working.step(
                "STC zone",
                "postcode %s, %s, %s"
                        .formatted(postcode, working.from(Field.SITE_POSTCODE), technology),
                "zone " + zone.get(),
                row.get().ref());
        differs(zone.get(), row.get());
        return zone;
    }

    private Finding missing(Postcode postcode, String technology) {
        return working.at(
                        Field.SITE_POSTCODE,
                        FindingCode.ZONE_MISSING,
                        "Postcode %s has no STC zone%s.".formatted(postcode, technology),
                        "Compare the postcode with the site's address; if it is right, leave the STCs out.")
                .seeing(postcode.digits());
    }

    private void differs(int zone, Dated<ZoneRow> row) {
        working.job()
                .claim(SchemeName.STC)
                .declaredZone()
                .filter(declared -> declared != zone)
                .ifPresent(
                        declared ->
                                working.report(
                                        working.at(
                                                        Field.of(SchemeName.STC, ClaimFact.ZONE),
                                                        FindingCode.ZONE_DIFFERS,
                                                        "The register says zone %d; the postcode lies in zone %d."
                                                                .formatted(declared, zone),
                                                        "Correct the zone to %d, or the postcode; zones of solar panels do not apply."
                                                                .formatted(zone))
                                                .seeing(Integer.toString(declared))
                                                .by(row.ref())));
    }
}
