package paperbark.firm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import paperbark.finding.FindingCode;
import paperbark.firm.Listing.Basis;

/**
 * Rows of the products table whose figures look as if they stood for fewer than ten years: in all
 * zones they are the same tenths of those of another model of the same kind and size.
 */
final class ScaledFigures {
    // Above six tenths models of one size differ so of their own; below, hardly in all zones alike.
    private static final int MOST_TENTHS = 6;
    private static final int FEWEST_ZONES = 3;

    private record Figures(Product product, Map<Integer, Integer> stcs, TableRow row) {
        int sum() {
            return stcs.values().stream().mapToInt(Integer::intValue).sum();
        }
    }

    private final Map<String, List<Figures>> bySize = new LinkedHashMap<>();

    /** Takes a row that was read; figures for a period are compared with nothing. */
    void add(Product product, TableRow row) {
        product.listings().stream()
                .filter(listing -> listing.basis() == Basis.TEN_YEARS)
                .forEach(
                        listing ->
                                bySize.computeIfAbsent(
                                                product.kind() + " " + product.litres(),
                                                size -> new ArrayList<>())
                                        .add(new Figures(product, listing.stcs(), row)));
    }

    /** Reports each doubtful row. */
    void tell() {
        for (List<Figures> same : bySize.values()) {
            Figures most = same.stream().max(Comparator.comparing(Figures::sum)).orElseThrow();
            for (Figures figures : same) {
                tenths(figures.stcs(), most.stcs()).ifPresent(n -> tell(figures, most, n));
            }
        }
    }

    private static void tell(Figures figures, Figures most, int tenths) {
        figures.row()
                .doubt(
                        "stcs_zone_1",
                        FindingCode.STC_BASIS_DOUBTFUL,
                        "In every zone the figures are %d tenths of those of %s %s, which is of the same kind and size."
                                .formatted(tenths, most.product().maker(), most.product().model()),
                        "Enter the figures over ten years, or write \"period\" under stcs_basis where they are the numbers of an installation period.");
    }

    /** The tenths that all zones share. */
    private static Optional<Integer> tenths(Map<Integer, Integer> few, Map<Integer, Integer> most) {
        if (few.size() < FEWEST_ZONES || !most.keySet().containsAll(few.keySet())) {
            return Optional.empty();
        }
        return IntStream.rangeClosed(1, MOST_TENTHS)
                .filter(
                        n ->
                                few.entrySet().stream()
                                        .allMatch(
                                                zone ->
                                                        zone.getValue()
                                                                == most.get(zone.getKey())
                                                                        * n
                                                                        / 10))
                .boxed()
                .findFirst();
    }
}
