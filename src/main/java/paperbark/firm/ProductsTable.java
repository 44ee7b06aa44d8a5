package paperbark.firm;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import paperbark.finding.Place;

/** The table of products: a row a model and eligibility period. */
final class ProductsTable {
    static final TableShape SHAPE =
            new TableShape(
                    "products",
                    List.of(
                            "maker",
                            "model",
                            "kind",
                            "boost",
                            "litres",
                            "tubes_or_panels",
                            "eligible_from",
                            "eligible_to",
                            "stcs_zone_1",
                            "stcs_zone_2",
                            "stcs_zone_3",
                            "stcs_zone_4",
                            "stcs_zone_5",
                            "register_version"),
                    List.of(
                            "stcs_basis",
                            "serial_pattern",
                            "warranty_tank_years",
                            "warranty_collector_years",
                            "warranty_parts_years",
                            "veec_listed_from",
                            "veec_listed_to",
                            "veec_bs_zone_4",
                            "veec_be_zone_4",
                            "veec_bs_zone_5",
                            "veec_be_zone_5"));

    private record Entry(Product product, Place firstPlace) {}

    private final Set<String> makers;
    private final Map<String, Entry> entries = new LinkedHashMap<>();
    private final ScaledFigures doubts = new ScaledFigures();

    private ProductsTable(List<Maker> makers) {
        this.makers =
                makers.stream().map(m -> TakenNames.key(m.name())).collect(Collectors.toSet());
    }

    /** The products in the order of their first rows. */
    static List<Product> read(OpenTable table, List<Maker> makers) {
        ProductsTable products = new ProductsTable(makers);
        table.rows().forEach(products::add);
        products.doubts.tell();
        return products.entries.values().stream().map(Entry::product).toList();
    }

    private void add(TableRow row) {
        Optional<Product> read = new ProductRow(row).read().filter(p -> hasMaker(p, row));
        if (read.isEmpty()) {
            return;
        }
        Product product = read.get();
        doubts.add(product, row);
        String key = TakenNames.key(TakenNames.model(product.maker(), product.model()));
        Entry earlier = entries.get(key);
        if (earlier == null) {
            entries.put(key, new Entry(product, row.place()));
        } else if (agrees(earlier, product, row) && isNewPeriod(earlier, product, row)) {
            entries.put(key, new Entry(joined(earlier.product, product), earlier.firstPlace));
        }
    }

    private boolean hasMaker(Product product, TableRow row) {
        if (!makers.contains(TakenNames.key(product.maker()))) {
            row.wrong(
                    "maker",
                    "No usable row of the makers table has this name.",
                    "Write the name as in the makers table, or add the maker there.");
        }
        return row.isSound();
    }

    private static boolean agrees(Entry earlier, Product product, TableRow row) {
        if (!facts(earlier.product).equals(facts(product))) {
            row.wrongRow(
                    "An earlier row of this model says something else than its days and STCs differently.",
                    "Make all but the eligibility days, STCs and register version equal in both rows.",
                    List.of(earlier.firstPlace));
        }
        return row.isSound();
    }

    private static List<Object> facts(Product p) {
        // Two compiled patterns are never equal, their texts are; and each row has its own number.
        return List.of(
                p.kind(),
                p.boost(),
                p.litres(),
                p.collectors(),
                p.veec().map(veec -> List.of(veec.listed(), veec.byZone())),
                p.serialPattern().map(Pattern::pattern),
                p.tankWarrantyYears(),
                p.collectorWarrantyYears(),
                p.partsWarrantyYears());
    }

    private static boolean isNewPeriod(Entry earlier, Product product, TableRow row) {
        List<Listing> listings = earlier.product.listings();
        boolean overlaps =
                product.listings().isEmpty()
                        || listings.isEmpty()
                        || listings.stream()
                                .anyMatch(
                                        l ->
                                                l.eligible()
                                                        .overlaps(
                                                                product.listings()
                                                                        .get(0)
                                                                        .eligible()));
        if (overlaps) {
            row.wrongRow(
                    "An earlier row of this model covers some of the same days.",
                    "End the earlier eligibility on the day before this one begins.",
                    List.of(earlier.firstPlace));
        }
        return row.isSound();
    }

    private static Product joined(Product earlier, Product later) {
        List<Listing> listings = new ArrayList<>(earlier.listings());
        listings.addAll(later.listings());
        return ProductBuilder.builder(earlier).listings(listings).build();
    }
}
