package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import paperbark.finding.Finding;
import paperbark.job.Job;
import paperbark.rules.Dated;
import paperbark.rules.Rulebook;
import paperbark.rules.ZoneRow;
import paperbark.value.Postcode;

/** The row of the zones table that a site's postcode stands in. */
final class SiteZone {
    private SiteZone() {}

    /**
     * The row; empty where postcode or product is missing, or the table does not know the postcode.
     *
     * @param unknown what is said of a postcode that the table does not know
     */
    static Optional<Dated<ZoneRow>> row(
            LocalDate day, Working working, Rulebook rules, Function<Postcode, Finding> unknown) {
        Job job = working.job();
        Optional<Postcode> postcode = job.site().address().postcode();
        if (postcode.isEmpty() || job.heater().product().isEmpty()) {
            return Optional.empty();
        }
        if (rules.zones().knows(postcode.get())) {
            return working.rule(rules.zones(), day, postcode.get());
        }
        working.report(unknown.apply(postcode.get()));
        return Optional.empty();
    }
}
