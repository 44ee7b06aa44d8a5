package paperbark.entitlement;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Collectors;
import paperbark.finding.FindingCode;
import paperbark.finding.RuleRef;
import paperbark.firm.Listing;
import paperbark.firm.Listing.Basis;
import paperbark.firm.Product;
import paperbark.job.Field;
import paperbark.value.Days;

/**
 * What the federal register says of a model, as the firm entered it in the products table.
 *
 * @param working where steps and findings go
 */
record StcListing(Working working) {

    /**
     * A figure of the register.
     *
     * @param stcs whole STCs
     * @param basis what they stand for
     */
    record Figure(int stcs, Basis basis) {}

    /** The figure for the day and zone; empty where the register has none. */
    Optional<Figure> figure(Product product, LocalDate day, Optional<Integer> zone) {
        Optional<Listing> listing = product.listing(day);
        if (listing.isEmpty()) {
            notListedThen(product, day);
        }
        return listing.flatMap(l -> zone.flatMap(z -> inZone(product, l, z)));
    }

    private void notListedThen(Product product, LocalDate day) {
        // rule: ree-regs-2001 reg 19A: the model must be listed for the day of installation.
        String name = product.maker() + " " + product.model();
        String periods =
                product.listings().stream()
                        .map(l -> l.eligible().toString())
                        .collect(Collectors.joining(" and "));
        String fact =
                periods.isEmpty()
                        ? "The products table has no listing of %s.".formatted(name)
                        : "%s is listed %s, not on %s.".formatted(name, periods, Days.show(day));
        working.report(
                working.at(
                                Field.MODEL,
                                FindingCode.MODEL_NOT_LISTED_THEN,
                                fact,
                                "Check model and date, or enter the listing in the products table.")
                        .seeing(product.model()));
    }

    private Optional<Figure> inZone(Product product, Listing listing, int zone) {
        RuleRef ref = entered(listing, zone);
        String name = product.maker() + " " + product.model();
        Optional<Integer> figure = Optional.ofNullable(listing.stcs().get(zone));
        figure.ifPresentOrElse(
                stcs ->
                        working.step(
                                listing.basis() == Basis.TEN_YEARS
                                        ? "STCs over ten years"
                                        : "STCs for the period",
                                "%s, %s, zone %d, listed %s"
                                        .formatted(
                                                name,
                                                working.from(Field.MODEL),
                                                zone,
                                                listing.eligible()),
                                Integer.toString(stcs),
                                ref),
                () ->
                        working.report(
                                working.at(
                                                Field.MODEL,
                                                FindingCode.NOT_LISTED_FOR_ZONE,
                                                "%s is not listed for zone %d."
                                                        .formatted(name, zone),
                                                "Check model and postcode, or enter the figure in the products table.")
                                        .seeing(product.model())
                                        .by(ref)));
        return figure.map(stcs -> new Figure(stcs, listing.basis()));
    }

    private static RuleRef entered(Listing listing, int zone) {
        return new RuleRef(
                "products",
                listing.row(),
                "register of solar water heaters, version " + listing.registerVersion(),
                "",
                RuleRef.ENTERED,
                "stcs_zone_%d %s, %s, eligible %s"
                        .formatted(
                                zone,
                                Optional.ofNullable(listing.stcs().get(zone))
                                        .map(String::valueOf)
                                        .orElse("blank"),
                                listing.basis().word(),
                                listing.eligible()),
                "");
    }
}
