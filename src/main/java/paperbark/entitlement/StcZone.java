package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;
import paperbark.job.ClaimFact;
import paperbark.job.Field;
import paperbark.job.Job;
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
        String technology = product.get().isSolar() ? "solar heaters" : "heat pumps";
        Optional<Integer> zone = row.get().row().zone(product.get().isSolar());
        if (zone.isEmpty()) {
            // rule: how-we-read zones: a blank of the table is "no zone", never a neighbour's.
            working.report(missing(postcode.get(), " for " + technology).by(row.get().ref()));
            return Optional.empty();
        }
        working.step(
                "STC zone",
                "postcode %s, %s, %s"
                        .formatted(postcode.get(), working.from(Field.SITE_POSTCODE), technology),
                "zone " + zone.get(),
                row.get().ref());
        differs(zone.get(), row.get());
        return zone;
    }

    private Optional<Dated<ZoneRow>> row(LocalDate day, Postcode postcode) {
        if (rules.zones().knows(postcode)) {
            return working.rule(rules.zones(), day, postcode);
        }
        working.report(missing(postcode, ""));
        return Optional.empty();
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
