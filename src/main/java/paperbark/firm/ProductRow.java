package paperbark.firm;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import paperbark.firm.Listing.Basis;
import paperbark.value.Boost;
import paperbark.value.DateRange;
import paperbark.value.HeaterKind;
import paperbark.value.WholeNumber;

/** Reads one row of the products table as a product with at most one listing. */
final class ProductRow {
    private static final int LAST_SOLAR_ZONE = 4;
    private static final int LAST_ZONE = 5;
    private static final List<Integer> VEEC_ZONES = List.of(4, 5);

    private final TableRow row;

    ProductRow(TableRow row) {
        this.row = row;
    }

    /** The product; empty when anything in the row is wrong. */
    Optional<Product> read() {
        Optional<String> maker = row.neededText("maker");
        Optional<String> model = row.neededText("model");
        Optional<HeaterKind> kind =
                row.needed("kind", CellText.oneOf(HeaterKind.values(), HeaterKind::word));
        Optional<Boost> boost = row.needed("boost", CellText.oneOf(Boost.values(), Boost::word));
        Optional<Integer> litres = row.needed("litres", WholeNumber::parse);
        Optional<Integer> collectors = row.optional("tubes_or_panels", WholeNumber::parse);
        kind.ifPresent(k -> checkCollectors(k, collectors.orElse(0)));
        boolean solar = kind.map(HeaterKind::isSolar).orElse(false);
        Optional<Listing> listing = listing(solar);
        Optional<VeecInputs> veec = veec();
        Optional<Pattern> pattern = row.optional("serial_pattern", CellText::pattern);
        Optional<Integer> tankYears = row.optional("warranty_tank_years", WholeNumber::parse);
        Optional<Integer> collectorYears =
                row.optional("warranty_collector_years", WholeNumber::parse);
        Optional<Integer> partsYears = row.optional("warranty_parts_years", WholeNumber::parse);
        return row.build(
                () ->
                        new Product(
                                maker.orElseThrow(),
                                model.orElseThrow(),
                                kind.orElseThrow(),
                                boost.orElseThrow(),
                                litres.orElseThrow(),
                                collectors.orElse(0),
                                listing.stream().toList(),
                                veec,
                                pattern,
                                tankYears,
                                collectorYears,
                                partsYears));
    }

    private void checkCollectors(HeaterKind kind, int collectors) {
        if (kind.isSolar() && collectors == 0) {
            row.wrong(
                    "tubes_or_panels",
                    "A solar heater has tubes or panels.",
                    "Type how many tubes or panels the model has.");
        } else if (!kind.isSolar() && collectors > 0) {
            row.wrong(
                    "tubes_or_panels",
                    "A heat pump has neither tubes nor panels.",
                    "Empty the cell, or correct the kind.");
        }
    }

    private Optional<Listing> listing(boolean solar) {
        Map<Integer, Integer> byZone = new HashMap<>();
        for (int zone = 1; zone <= LAST_ZONE; zone++) {
            int key = zone;
            row.optional("stcs_zone_" + zone, WholeNumber::parse)
                    .ifPresent(stcs -> byZone.put(key, stcs));
        }
        if (solar && byZone.containsKey(LAST_ZONE)) {
            row.wrong(
                    "stcs_zone_" + LAST_ZONE,
                    "Solar heaters have zones 1 to " + LAST_SOLAR_ZONE + " only.",
                    "Empty the cell, or correct the kind.");
        }
        DateRange eligible = row.range("eligible_from", "eligible_to");
        if (byZone.isEmpty() && eligible.equals(DateRange.ALWAYS)) {
            return Optional.empty();
        }
        row.needs("eligible_from");
        Basis basis =
                row.optional("stcs_basis", CellText.oneOf(Basis.values(), Basis::word))
                        .orElse(Basis.TEN_YEARS);
        if (basis == Basis.PERIOD) {
            row.needs("eligible_to");
        }
        Optional<String> version = row.neededText("register_version");
        return version.map(v -> new Listing(eligible, basis, byZone, v, row.number()));
    }

    private Optional<VeecInputs> veec() {
        Map<Integer, VeecInputs.Energies> byZone = new HashMap<>();
        VEEC_ZONES.forEach(zone -> energies(zone).ifPresent(e -> byZone.put(zone, e)));
        DateRange listed = row.range("veec_listed_from", "veec_listed_to");
        if (byZone.isEmpty() && listed.equals(DateRange.ALWAYS)) {
            return Optional.empty();
        }
        row.needs("veec_listed_from");
        return Optional.of(new VeecInputs(listed, byZone, row.number()));
    }

    private Optional<VeecInputs.Energies> energies(int zone) {
        String bs = "veec_bs_zone_" + zone;
        String be = "veec_be_zone_" + zone;
        if (!row.saysAnyOf(bs, be)) {
            return Optional.empty();
        }
        Optional<BigDecimal> supplementary = row.needed(bs, CellText::decimal);
        Optional<BigDecimal> auxiliary = row.needed(be, CellText::decimal);
        return supplementary.flatMap(s -> auxiliary.map(a -> new VeecInputs.Energies(s, a)));
    }
}
